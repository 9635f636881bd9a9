// Site and wind: what the lead chose, and what the wind does to the whole shell from every side.

import { readSpeed } from '@shellraise/core';
import { type ReactNode, useState } from 'react';
import type { GroundAnswer } from '../../engine/ground.ts';
import { LimitField } from '../../ui/limit-field.tsx';
import type { Typed } from '../../ui/use-typed.ts';
import { useWords } from '../../words/words.ts';
import { clockwise } from '../places/door/doors.ts';
import { TapeForm } from './allowed-forms.tsx';
import { within } from './edits.ts';
import { Caution, Choice, optionsOf } from './small.tsx';
import { SnowForm, UseForm } from './snow-form.tsx';
import { useGround, useQuantities } from './use-ground.ts';
import { WindRose } from './wind-rose.tsx';

/** Winds that may be entered, m/s, as the project file has them. */
export const WINDS = { least: 0.5, most: 115 } as const;

/** The panel. */
export function SitePanel({
  answer,
  children,
}: {
  answer: GroundAnswer | null;
  /** What else is told of the whole shell. */
  children?: ReactNode;
}) {
  const { ground, groundForms } = useWords();
  const { site, wind } = ground;
  return (
    <div className="fit-panel">
      <h3>{site.heading}</h3>
      <SiteForm />
      <TapeForm />
      <h3>{groundForms.use.heading}</h3>
      <UseForm />
      <h3>{wind.heading}</h3>
      {answer ? <WindFacts answer={answer} /> : null}
      <h3>{groundForms.snow.heading}</h3>
      <SnowForm answer={answer} />
      {answer ? children : null}
    </div>
  );
}

function SiteForm() {
  const { site: words, changes } = useWords().ground;
  const { ground, loads, setGround, setLoads } = useGround();
  const { speed, speedUnit } = useQuantities();
  const readWind = (text: string): Typed => {
    if (text.trim() === '') return { ok: true, value: undefined };
    const read = readSpeed(text, { unit: speedUnit });
    return read.ok && read.value >= WINDS.least && read.value <= WINDS.most ? read : { ok: false };
  };
  const { wind } = loads;
  const [as, setAs] = useState<keyof typeof words.kinds>('gust');
  return (
    <div className="ground-form">
      <LimitField
        name={words.name}
        shown={ground.site.name ?? ''}
        read={(text) => ({ ok: true, value: text.trim().slice(0, 60) })}
        onValue={(name) => {
          const { name: _, ...rest } = ground.site;
          setGround({ site: name === '' ? rest : { ...rest, name } }, changes.site);
        }}
      />
      <LimitField
        name={words.wind}
        shown={wind ? speed(wind.speed) : ''}
        note={words.windNote(speed(30))}
        fault={words.windFault(speed(WINDS.least), speed(WINDS.most))}
        read={readWind}
        onValue={(value) =>
          setLoads(
            { wind: value === undefined ? null : { as: wind?.as ?? as, speed: value } },
            changes.wind,
          )
        }
      />
      <Choice
        name={words.as}
        value={wind?.as ?? as}
        of={optionsOf(words.kinds)}
        onChoose={(other) => {
          setAs(other);
          if (wind) setLoads({ wind: { ...wind, as: other } }, changes.wind);
        }}
      />
      <Choice
        name={words.code}
        value={loads.code}
        of={optionsOf(words.codes)}
        onChoose={(code) => setLoads({ code }, changes.wind)}
      />
      <Choice
        name={words.law}
        value={loads.law}
        of={optionsOf(words.laws)}
        onChoose={(law) => setLoads({ law }, changes.wind)}
      />
      <Choice
        name={words.terrain}
        value={loads.terrain}
        of={optionsOf(words.terrains)}
        onChoose={(terrain) => setLoads({ terrain }, changes.site)}
      />
      <LimitField
        name={words.days}
        shown={loads.daysStanding === null ? '' : String(loads.daysStanding)}
        note={words.daysNote}
        fault={words.daysFault}
        read={(text) => within(text, 0.01, 36_500)}
        onValue={(value) => setLoads({ daysStanding: value ?? null }, changes.site)}
        numeric
      />
      <LimitField
        name={words.mass}
        shown={loads.panelMass === null ? '' : String(loads.panelMass)}
        note={words.massNote}
        fault={words.massFault}
        read={(text) => within(text, 0.1, 200)}
        onValue={(value) => setLoads({ panelMass: value ?? null }, changes.site)}
        numeric
      />
    </div>
  );
}

function WindFacts({ answer: { wind, weight, unweighed } }: { answer: GroundAnswer }) {
  const { site: words, wind: facts } = useWords().ground;
  const forms = useWords().groundForms;
  const { loads } = useGround();
  const { speed, force, area } = useQuantities();
  const { design } = wind;
  const worst = wind.from[wind.worst];
  const code = design?.code as keyof typeof words.codes | undefined;
  const by = (perPascal: number): string =>
    design ? force(perPascal * design.value) : area(perPascal);
  if (!worst) return null;
  return (
    <div className="wind-facts">
      <WindRose wind={wind} />
      <div className="wind-words">
        <p className="quiet">
          {forms.use.enclosure[wind.enclosure]}{' '}
          {loads.daysStanding === null ? '' : forms.use.exposure(loads.daysStanding)}
        </p>
        <p>
          {design && code
            ? facts.pressure(`${design.value.toFixed(0)} Pa`, words.codes[code], speed(design.gust))
            : facts.none}
        </p>
        <p className="facts-size">{facts.worst(clockwise(worst.from))}</p>
        <dl className="ground-facts">
          <dt>{facts.drag}</dt>
          <dd>{by(worst.drag)}</dd>
          <dt>{facts.lift}</dt>
          <dd>{by(worst.lift)}</dd>
        </dl>
        {design ? null : <p className="quiet">{facts.perPascal}</p>}
        <p>
          {weight > 0 ? facts.weight(force(weight)) : ''}{' '}
          {unweighed > 0 ? facts.unweighed(unweighed) : ''}
        </p>
        <Caution sources={wind.sources} />
      </div>
    </div>
  );
}
