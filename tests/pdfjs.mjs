// Reads sheets by pdf.js, and holds what it gives against the pages' own text: the words in letters
// from right to left have to be all there, letter for letter in the order they are read, and nothing
// else. Marks are left out: where one is on a word's last letter, pdf.js puts the space between the
// letter and its mark, whatever the file says, as a mark is no wider than nothing.
// usage: node pdfjs.mjs PDFJS FOLDER…   (a FOLDER has NAME.pdf and NAME.txt, the page as marks)
import fs from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";

const [library, ...folders] = process.argv.slice(2);
const { getDocument, version } = await import(pathToFileURL(path.resolve(library)).href);

const directions = /[\u061C\u200E\u200F\u202A-\u202E\u2066-\u2069]/gu;
// A word: its letters.
const words = /[\p{Script=Arabic}\p{Script=Hebrew}][\p{Script=Arabic}\p{Script=Hebrew}]*/gu;

const wordsOf = (text) => text.normalize("NFC").replace(directions, "").replace(/\p{M}/gu, "").match(words) ?? [];

// The texts of a page as marks: "body 10.000 20.000 "…" 9pt"; not what stands for a figure or a link.
function textsOf(dump) {
  return [...dump.matchAll(/^ *[a-z-]+ -?[\d.]+ -?[\d.]+ "([^"\n]*)" \d/gmu)].map((found) => found[1]);
}

async function stringsOf(file) {
  const loading = getDocument({ data: new Uint8Array(fs.readFileSync(file)), verbosity: 0 });
  const pdf = await loading.promise;
  const strings = [];
  for (let number = 1; number <= pdf.numPages; ++number) {
    const page = await pdf.getPage(number);
    const { items } = await page.getTextContent({ disableNormalization: true });
    strings.push(...items.map((item) => item.str));
  }
  await loading.destroy();
  return strings;
}

// The first place where two lists part.
function parting(wanted, given) {
  const at = wanted.findIndex((word, i) => word !== given[i]);
  return at >= 0 ? at : given.length > wanted.length ? wanted.length : -1;
}

let sheets = 0, all = 0, wrong = 0;
for (const folder of folders) {
  for (const name of fs.readdirSync(folder).filter((one) => one.endsWith(".pdf")).sort()) {
    const file = path.join(folder, name);
    const wanted = textsOf(fs.readFileSync(file.replace(/pdf$/u, "txt"), "utf8")).flatMap(wordsOf);
    const given = (await stringsOf(file)).flatMap(wordsOf);
    ++sheets;
    all += wanted.length;
    const at = parting(wanted, given);
    if (at < 0) continue;
    ++wrong;
    const some = (words) => words.slice(at, at + 4).join(" ");
    console.error(`${file}: word ${at + 1} of ${wanted.length}: "${some(wanted)}" is read "${some(given)}"`);
  }
}
console.log(`pdf.js ${version}: ${sheets} sheets, ${all} words from right to left; ${wrong} sheets are not read as they are written`);
process.exit(all === 0 || wrong > 0 ? 1 : 0);
