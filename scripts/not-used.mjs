// Words that texts of this project do not use, and what they say instead (docs/words.md has the words
// that they do use). `within`: what the word may stand in; `where`: only in places like these.

/** @type {readonly { word: RegExp; say: string; within?: RegExp; where?: RegExp }[]} */
export const notUsed = [
  // Two names for one thing.
  { word: /\bcalculat\w*/i, say: 'reckon' },
  { word: /\b(seeks?|seeking|sought)\b/i, say: 'look for' },
  { word: /\btaken for granted\b/i, say: 'assumed' },
  { word: /\bnot told\b|\bN(o|othing) ([\w-]+ )*(is|are) told\b/, say: 'entered, or reckoned' },
  { word: /\bdirector(y|ies)\b/i, say: 'folder' },
  { word: /\bsurplus\b/i, say: 'left over' },
  { word: /\bstruts?\b/i, say: 'seam, or bar of a frame' },
  { word: /\bapex\b/i, say: 'crown' },
  { word: /\bfoundations?\b/i, say: 'base ring, or what is under it' },
  { word: /\bsheet (Pile|Shape|Places|Ground|Raising|Record|Papers)\b/, say: 'the … sheet' },
  // What is done, and what is wrong.
  { word: /\bclick\w*/i, say: 'press, or tap' },
  { word: /\b(abort|terminat)(e|ed|ing)?\b/i, say: 'stop, or end' },
  { word: /\b(invalid|illegal)\b/i, say: 'what was found, and what was expected' },
  { word: /, [^,]*\ballowed$/, say: ', expected …' },
  { word: /\b(his|him|himself|he|she|her)\b/i, say: 'who it is, or they' },
  // How it is written.
  { word: /\bcan not\b|n['’]t\b/, say: 'cannot, do not and their like' },
  { word: /\be\.g\.|\bi\.e\./, say: 'such as; that is' },
  { word: /\p{L}'s\b/u, say: '’s', where: /\.tsx?:/ },
  { word: /\b\d{1,3},\d{3}\b/, say: 'a space in large numbers', within: /`1,103`/ },
  { word: /\d(mm|cm|kg|kN|dB|MHz|GHz|%)(?!\w)/, say: 'a space between number and unit' },
];
