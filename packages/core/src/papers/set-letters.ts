// Words as a printer sets them when it has no typeface but those in the file: each letter from the first
// face that has it, what is read from right to left in the order of the page, and what no face has as its
// number in Unicode, told to the caller.

/** A typeface: what it is called where it is set, and the letters that it has. */
export interface Face {
  readonly name: string;
  readonly has: (codePoint: number) => boolean;
}

/** Letters that follow each other in one face, from left to right on the page. */
export interface Run {
  readonly face: string;
  readonly text: string;
}

/** The words as runs, and the letters that no face has (each once, in order). Letters that no face has
 * stand as `<U+5F20>`, in the first face; marks that join or vary letters fall away without a word. */
export function setLetters(
  words: string,
  faces: readonly Face[],
): { readonly runs: readonly Run[]; readonly missing: readonly string[] } {
  const first = faces[0];
  if (first === undefined) throw new Error('no typeface to set words in');
  const runs: Run[] = [];
  const missing = new Set<string>();
  const put = (face: string, text: string): void => {
    const last = runs.at(-1);
    if (last?.face === face) runs[runs.length - 1] = { face, text: last.text + text };
    else runs.push({ face, text });
  };
  const set = (letter: string): void => {
    const code = letter.codePointAt(0) as number;
    // A blank stays in the face of the letter before it.
    const face =
      letter === ' ' && runs.length > 0
        ? { name: (runs.at(-1) as Run).face }
        : faces.find((one) => one.has(code));
    const parts = letter.normalize('NFD');
    if (face !== undefined) put(face.name, letter);
    else if (unseen.test(letter)) return;
    else if (parts !== letter && [...parts].every((part) => faces.some(hasLetter(part))))
      for (const part of parts) set(part);
    else {
      missing.add(letter);
      put(first.name, `<U+${code.toString(16).toUpperCase().padStart(4, '0')}>`);
    }
  };
  for (const letter of onPage(words.replace(/\s+/g, ' '))) set(letter);
  return { runs, missing: [...missing] };
}

const hasLetter =
  (letter: string) =>
  (face: Face): boolean =>
    face.has(letter.codePointAt(0) as number);

/** Joiners, variation selectors, marks of direction: nothing is seen of them. */
const unseen = /\p{Cf}|\p{Cc}|\p{Variation_Selector}/u;

/** Words of scripts that are read from right to left. */
const leftward = /[\p{Script=Hebrew}\p{Script=Arabic}]/u;

/** The words in the order of the page: runs of words read leftward turned round, each left as it is (its
 * letters are put in order with its shapes). Numbers between them go with them. */
function onPage(words: string): string {
  if (!leftward.test(words)) return words;
  const parts = words.split(' ');
  const turned: string[] = [];
  for (let i = 0; i < parts.length; ) {
    let end = i;
    for (let j = i; j < parts.length && isLeftward(parts[j] as string, j > i); j++)
      if (leftward.test(parts[j] as string)) end = j + 1;
    if (end === i) turned.push(parts[i++] as string);
    else {
      turned.push(...parts.slice(i, end).reverse());
      i = end;
    }
  }
  return turned.join(' ');
}

const isLeftward = (word: string, orNumber: boolean): boolean =>
  leftward.test(word) || (orNumber && !/\p{L}/u.test(word));
