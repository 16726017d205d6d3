// Writes plural-rules.csv: the plural rules (cardinal) of the languages of noonbook,
// with their examples, as cldr-core has them.
//
//   node plural-rules.mjs > plural-rules.csv
import { readFileSync } from "node:fs";

const file = new URL("node_modules/cldr-core/supplemental/plurals.json", import.meta.url);
const rules = JSON.parse(readFileSync(file, "utf8")).supplemental["plurals-type-cardinal"];

console.log("language,form,rule,integers,decimals");
for (const language of ["en", "fr"]) {
  for (const [key, text] of Object.entries(rules[language])) {
    const [, rule, integers = "", decimals = ""] = text.match(/^(.*?) *(?:@integer (.*?))?(?: *@decimal (.*))?$/);
    console.log([language, key.replace("pluralRule-count-", ""), rule, integers, decimals].map((cell) => `"${cell}"`).join(","));
  }
}
