// Masses, times and pieces as this person reads them.

import { writeMass } from '@shellraise/core';
import { useMemo } from 'react';
import { useLengths } from '../../ui/app-context.tsx';
import { listed } from '../../words/counted.ts';
import { useWords } from '../../words/words.ts';
import { useQuantities } from '../ground/use-ground.ts';
import { roundedHours } from './hours.ts';
import { unbroken } from './props-at.ts';

/** What the cards write. */
export function useCardWords(numbers: readonly string[]) {
  const { raising: words } = useWords();
  const lengths = useLengths();
  const { speed, metric } = useQuantities();
  return useMemo(
    () => ({
      height: lengths.large,
      speed,
      mass: (kilograms: number): string => writeMass(kilograms, metric ? 'kg' : 'lb', 0),
      time: (seconds: number): string => {
        const { hours, minutes } = roundedHours(seconds);
        return words.card.hours(hours, minutes);
      },
      piece: (places: readonly number[]): string =>
        listed(places.map((place) => unbroken(numbers[place] ?? '')).sort()),
    }),
    [words, lengths, speed, metric, numbers],
  );
}

/** As {@link useCardWords} gives them. */
export type CardWords = ReturnType<typeof useCardWords>;
