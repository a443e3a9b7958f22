"""axe-core, which finds what assistive technology cannot use. Installed into the build folder by npm;
never part of the project."""

import os
import subprocess

TAGS = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]


def source(folder):
    """Its script, or None where npm cannot be reached."""
    path = os.path.join(folder, "node_modules", "axe-core", "axe.min.js")
    if not os.path.exists(path):
        os.makedirs(folder, exist_ok=True)
        try:
            subprocess.run(["npm", "install", "--no-audit", "--no-fund", "--silent", "--prefix", folder, "axe-core@4"],
                           check=True, timeout=300, capture_output=True)
        except (OSError, subprocess.SubprocessError):
            return None
    with open(path, encoding="utf-8") as script:
        return script.read()


def findings(browser, script):
    """Each finding as "rule: element"."""
    browser.js(script)
    return browser.do("POST", "/execute/async", {"script": """
        const [tags, done] = arguments;
        axe.run(document, {runOnly: tags, resultTypes: ['violations']}).then(result => done(result.violations.flatMap(
          rule => rule.nodes.map(node => `${rule.id}: ${node.html.slice(0, 160)} ${node.any?.[0]?.message ?? ''}`))));""", "args": [TAGS]})
