// What takes long on the Fit-out sheet, each one run at a time, kept beside the sheet.

import { fitoutEngine, longEngine } from '../../engine/bridge.ts';
import type {
  FitoutCarryQuestion,
  FitoutCarryTold,
  FitoutDoorQuestion,
  FitoutDoorTold,
  FitoutQuestion,
  SignalTold,
} from '../../engine/fitout.ts';
import { createAskRuns } from '../../engine/runs.ts';

const now = (): number => performance.now();

/** A thing's way. */
export const carryRuns = createAskRuns<FitoutCarryQuestion, FitoutCarryTold>(
  (question, onProgress) => fitoutEngine.ask('fitoutCarry', question, onProgress),
  now,
);

/** What a door costs the frame. */
export const doorRuns = createAskRuns<FitoutDoorQuestion, FitoutDoorTold>(
  (question, onProgress) => fitoutEngine.ask('fitoutDoor', question, onProgress),
  now,
);

/** The sky. */
export const signalRuns = createAskRuns<FitoutQuestion, readonly SignalTold[]>(
  (question, onProgress) => fitoutEngine.ask('fitoutSignal', question, onProgress),
  now,
);

/** All that is quick. */
export const askFitout = (question: FitoutQuestion) => longEngine.ask('fitout', question);

/** A door without its frame. */
export const askDoor = (question: FitoutDoorQuestion) => longEngine.ask('fitoutDoor', question);
