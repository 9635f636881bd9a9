// What a standing shell's drawings take for granted: how its sides were measured.

import { projectOf } from '../../state/app-state.ts';
import { useAppState, useLengths } from '../../ui/app-context.tsx';
import { useWords } from '../../words/words.ts';

/** In words, for title blocks and papers. */
export function useAssumes(): string {
  const { block, numbers } = useWords().places;
  const lengths = useLengths();
  const { measuredAlong, readingSd } = useAppState((state) => projectOf(state).pile);
  return block.assumes(numbers.assumes(numbers.along[measuredAlong]), lengths.small(readingSd));
}
