// Why something was not done, in the words of the salon and in its language. What the program says
// itself is English, and may name files: it is told only where it does not.

import {has, say, spoken} from './words.js';
import {ofFiles} from './plain_words.js';
import {Refusal} from './server.js';

const byStatus = {404: 'gone', 413: 'large', 507: 'write'};

export function refused(problem) {
  if (!(problem instanceof Refusal)) return say('not-reached');
  const key = `refused-${problem.code ?? byStatus[problem.status]}`;
  if (key === 'refused-faults' && problem.about) return say('refused-faults-of', problem.about);
  if (has(key)) return say(key);
  return spoken().startsWith('en') && problem.message && !ofFiles(problem.message) ? problem.message : say('refused');
}
