// One lesser shell: its drawing, what it is and lacks, and the field and press that name it.

import { useId, useState } from 'react';
import type { ShownSecond } from '../../../engine/leftovers.ts';
import { useLengths } from '../../../ui/app-context.tsx';
import { useWords } from '../../../words/words.ts';
import { CandidateDrawing } from '../candidate.tsx';
import { withSecond } from '../decide.ts';
import type { Stood } from '../stood.ts';
import { useDecide } from '../use-decide.ts';

/** The row. */
export function SecondRow({
  second,
  stood,
  tallness,
  across,
}: {
  second: ShownSecond;
  stood: Stood;
  /** How tall the drawing is over its width, and which part of the ball's width it shows. */
  tallness: number;
  across: number;
}) {
  const { fitting, places } = useWords();
  const words = fitting.leftOver;
  const lengths = useLengths();
  const decide = useDecide(stood);
  const id = useId();
  const [naming, setNaming] = useState(false);
  const [name, setName] = useState('');
  const { decided, height, floor, flat, unevenness, lacking } = second;
  const panels = decided.panels.reduce((sum, { count }) => sum + count, 0);
  const what = words.what[decided.what];
  const usual = words.usualName[decided.what];
  const keep = (): void => {
    const own = name.trim() || usual;
    decide((decision) => withSecond(decision, { name: own, ...decided }), words.naming(own));
    setNaming(false);
  };
  return (
    <li className="fit">
      <div className="candidate fit-drawing">
        <CandidateDrawing picture={second.picture} tallness={tallness} across={across} />
      </div>
      <div className="fit-words">
        <p>
          <span className="candidate-height">{lengths.large(height)}</span> {what}
        </p>
        <p>
          {places.chooser.floor(lengths.large(floor))}, {places.plural(panels, 'panel')},{' '}
          {flat ? places.facts.flat : places.facts.uneven(lengths.side(unevenness))}
        </p>
        {lacking.length > 0 ? (
          <p>
            <strong>
              {words.with(lacking.map(({ kinds, panels: n }) => words.ofKind(n, kinds)))}
            </strong>
          </p>
        ) : null}
      </div>
      <div className="fit-act">
        <button
          type="button"
          aria-expanded={naming}
          aria-label={`${words.name}: ${what}, ${lengths.large(height)}, ${places.plural(panels, 'panel')}`}
          onClick={() => setNaming(!naming)}
        >
          {words.name}
        </button>
      </div>
      {naming ? (
        <form
          className="naming"
          onSubmit={(event) => {
            event.preventDefault();
            keep();
          }}
        >
          <label htmlFor={id}>{words.called}</label>
          <input
            id={id}
            autoComplete="off"
            maxLength={80}
            placeholder={usual}
            value={name}
            // biome-ignore lint/a11y/noAutofocus: the press asked for this field
            autoFocus
            onChange={({ target }) => setName(target.value)}
          />
          <button type="submit" className="main">
            {words.keep}
          </button>
        </form>
      ) : null}
    </li>
  );
}
