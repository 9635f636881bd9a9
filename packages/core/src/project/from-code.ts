// A project from the text of the QR code on the sheets of a dismantled shell (papers/small-project.ts).

import { inflateSync, strFromU8 } from 'fflate';
import { type Read, refuse } from '../measure/fault.ts';
import { CODE_WORDS, LONGEST_CODE } from '../papers/small-project.ts';
import { fromBase45 } from '../record/base45.ts';

/** Whether a text is that of such a code. */
export const isProjectCode = (text: string): boolean =>
  text.trimStart().startsWith(CODE_WORDS.project);

/** The JSON of the project in a code; a fault where the text is cut short or changed. */
export function textOfCode(text: string): Read<string> {
  const said = text.trim();
  if (said.length > LONGEST_CODE)
    return refuse('file', `a code of ${said.length} characters`, `at most ${LONGEST_CODE}`);
  const bytes = fromBase45(said.slice(CODE_WORDS.project.length));
  const bad = refuse(
    'file',
    'a project code that is cut short or changed',
    'the whole text of the code',
  );
  if (bytes === null) return bad;
  try {
    return { ok: true, value: strFromU8(inflateSync(bytes)) };
  } catch {
    return bad;
  }
}
