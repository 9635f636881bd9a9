// The sheets of the record on paper: course by course, two columns, a line for each thing.

import type { TwinLine } from '@shellraise/core';
import { createPortal } from 'react-dom';
import { useWords } from '../../words/words.ts';

/** The sheets, printed in place of the Record sheet while they are there. */
export function PrintedTwin({
  title,
  check,
  lines,
}: {
  title: string;
  check: string;
  lines: readonly TwinLine[];
}) {
  const words = useWords().twin.sheet;
  return createPortal(
    <div className="printed-twin printed-alone print-only">
      <h1>{words.title(title)}</h1>
      <p className="twin-head">
        <strong>{words.check(check)}</strong>
        {words.blanks.map((blank) => (
          <span key={blank} className="twin-blank">
            {blank}
          </span>
        ))}
      </p>
      <p>{words.caution}</p>
      <div className="twin-columns">
        {blocksOf(lines).map((block) => (
          <table key={block[0]?.number}>
            <caption>
              {words.course((block[0] as TwinLine).course)} ·{' '}
              {words.of[(block[0] as TwinLine).sort]} · {check}
              <span>{words.key[(block[0] as TwinLine).sort]}</span>
            </caption>
            <tbody>
              {block.map((line) => (
                <tr key={line.number}>
                  <th scope="row">{line.number}</th>
                  <td>{line.name}</td>
                  {line.boxes.map(({ letter }) => (
                    <td key={letter} className="twin-box">
                      {letter}
                    </td>
                  ))}
                  {line.sort === 'place' ? <td className="twin-tag" /> : null}
                </tr>
              ))}
            </tbody>
          </table>
        ))}
      </div>
    </div>,
    document.body,
  );
}

/** Lines of one course and sort, in turn. */
function blocksOf(lines: readonly TwinLine[]): readonly (readonly TwinLine[])[] {
  const blocks: TwinLine[][] = [];
  for (const line of lines) {
    const [last] = blocks.at(-1) ?? [];
    if (last && last.course === line.course && last.sort === line.sort) blocks.at(-1)?.push(line);
    else blocks.push([line]);
  }
  return blocks;
}
