// A model of this very shell, whichever sort is asked for.

import type {
  ModelGround,
  ModelMade,
  ModelRefused,
  ModelSettings,
  ModelSort,
} from './model-ask.ts';
import { cutModel } from './model-cut.ts';
import { fullSizeModel } from './model-full-size.ts';
import { netModel } from './model-net.ts';
import { printModel } from './model-print.ts';
import { snapModel } from './model-snap.ts';

/** The files of a model, or what stands in the way. Same question, same bytes. */
export function modelOf(
  sort: ModelSort,
  ground: ModelGround,
  settings: ModelSettings,
): ModelMade | ModelRefused {
  if (!(settings.scale > 0 && settings.scale < Infinity))
    return {
      ok: false,
      setting: 'scale',
      found: String(settings.scale),
      expected: 'expected more than 0',
    };
  switch (sort) {
    case 'net':
      return netModel(ground, settings, false);
    case 'strips':
      return netModel(ground, settings, true);
    case 'cut':
      return cutModel(ground, settings);
    case 'print':
      return printModel(ground, settings);
    case 'snap':
      return snapModel(ground, settings);
    case 'full-size':
      return fullSizeModel(ground, settings);
  }
}
