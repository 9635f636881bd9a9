// A tape measure and the person at it: what is read of a true length, and how it is written down.

import { normal } from './random.mjs';

const inch = 0.0254;

/** A person's readings: `bias` and `sd` in metres; `step` the division read to, in metres. */
export const people = {
  Idris: { bias: 0.0006, sd: 0.0008, step: inch / 16 },
  Petra: { bias: -0.0004, sd: 0.0009, step: 0.001 },
  Wim: { bias: 0.0001, sd: 0.0008, step: inch / 16 },
};

/** One reading, metres: the true length, the person's bias and slip, rounded to the division. */
export function read(length, person, random) {
  const seen = length + person.bias + person.sd * normal(random);
  return metres(Math.round(seen / person.step) * person.step);
}

/** Metres without the noise of binary fractions. */
export const metres = (value) => Number(value.toFixed(7));

/** `43 7/16`: whole inches and sixteenths in lowest terms. */
export function sixteenths(length) {
  let parts = Math.round((length / inch) * 16);
  let below = 16;
  const whole = Math.floor(parts / below);
  parts -= whole * below;
  while (parts > 0 && parts % 2 === 0) {
    parts /= 2;
    below /= 2;
  }
  return parts === 0 ? String(whole) : `${whole} ${parts}/${below}`;
}
