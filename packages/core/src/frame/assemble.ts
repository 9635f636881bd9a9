// The stiffness matrix of a structure, from its elements.

import { addBlockInto, type SymmetricMatrix } from '../math/sparse/symmetric.ts';
import { type Element, type Natural, stiffnessOf } from './elements/element.ts';
import { type Numbering, unknownsAt } from './numbering.ts';
import { naturalOf, type Structure } from './structure.ts';

/** Natural strains of all elements, in order. */
export const naturalsOf = (structure: Structure): Natural[] =>
  structure.elements.map((element) => naturalOf(element, structure.nodes));

/** The stiffness matrix; elements whose flag in `slack` is set are left out. */
export function stiffnessMatrix(
  structure: Structure,
  numbering: Numbering,
  naturals: readonly Natural[],
  slack?: Uint8Array,
): SymmetricMatrix {
  return assembled(structure, numbering, (_, e) => (slack?.[e] ? null : stiffnessOf(naturals[e])));
}

/** A matrix put together from one block for each element, by rows, in the order of the element's
 * unknowns; null adds nothing. */
export function assembled(
  structure: Structure,
  numbering: Numbering,
  block: (element: Element, index: number) => Float64Array | null,
): SymmetricMatrix {
  const { pattern, unknown } = numbering;
  const value = new Float64Array(pattern.row.length);
  structure.elements.forEach((element, e) => {
    const one = block(element, e);
    if (one) addBlockInto(value, pattern, unknownsAt(element, unknown), one);
  });
  return { ...pattern, value };
}
