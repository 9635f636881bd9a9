// The title block of a sheet: what ISO 7200 gives a drawing, and whether it is saved.

import { projectOf, sheets } from '../state/app-state.ts';
import { useWords } from '../words/words.ts';
import { useAppState } from './app-context.tsx';

/** A field of the block. */
export interface BlockField {
  readonly name: string;
  readonly value: string;
  readonly wide?: boolean;
}

/** The block of the sheet on show; `more` are fields that only this sheet has. */
export function TitleBlock({ more = [] }: { more?: readonly BlockField[] }) {
  const words = useWords().frame;
  const title = useAppState((state) => projectOf(state).title);
  const sheet = useAppState((state) => state.sheet);
  const lengths = useAppState((state) => state.settings.lengths);
  const saving = useAppState((state) => state.saving);
  const date = new Date().toLocaleDateString('en-GB', {
    day: 'numeric',
    month: 'short',
    year: 'numeric',
  });
  const fields: BlockField[] = [
    { name: words.block.project, value: title || words.untitled, wide: true },
    { name: words.block.sheet, value: `${sheets.indexOf(sheet) + 1} ${words.sheets[sheet]}` },
    { name: words.block.lengths, value: words.lengths[lengths] },
    ...more,
    { name: words.block.date, value: date },
    { name: words.block.saved, value: words.saving[saving.status] },
  ];
  return (
    <dl className="title-block">
      {fields.map(({ name, value, wide }) => (
        <div key={name} className={wide ? 'wide' : undefined}>
          <dt>{name}</dt>
          <dd>{value}</dd>
        </div>
      ))}
    </dl>
  );
}
