// The colours and line weights of the present scheme as numbers for the graphics card, and word when
// the scheme changes.

import type { Fill, HatchName } from '@shellraise/core';
import { screenColour } from '../svg-items.tsx';

/** Red, green and blue as on the screen, 0 … 1. */
export type Colour = readonly [number, number, number];

/** What the 3D view takes from the style sheet. */
export interface Palette {
  readonly paper: Colour;
  readonly ground: Colour;
  readonly ink: Colour;
  readonly grey: Colour;
  readonly accent: Colour;
  /** How much a panel darkens as it turns away, 0 … 1. */
  readonly shade: number;
  /** Widths, pixels of the page. */
  readonly thin: number;
  readonly light: number;
  readonly bold: number;
  readonly heavy: number;
  readonly hatch: Colour;
  /** What a panel with this fill looks like. */
  readonly dressOf: (fill: Fill | undefined) => Dress;
}

/** How a panel is filled. */
export interface Dress {
  readonly tint: Colour;
  readonly hatch: HatchName | null;
}

/** The palette of the present scheme. */
export function readPalette(): Palette {
  const style = getComputedStyle(document.documentElement);
  const pen = document.createElement('canvas').getContext('2d');
  const value = (name: string): string => style.getPropertyValue(name).trim();
  const colour = (name: string): Colour => colourOf(value(name), pen);
  const width = (name: string): number => Number.parseFloat(value(name)) || 1;
  const paper = colour('--paper');
  const cache = new Map<string, Colour>();
  const tintOf = (fill: Fill | undefined): Colour => {
    const tint = fill?.tint ?? null;
    if (tint === null) return paper;
    const known = cache.get(tint);
    if (known) return known;
    const name = /^var\((--[\w-]+)\)$/.exec(screenColour(tint))?.[1];
    const own = name ? colour(name) : colourOf(tint, pen);
    cache.set(tint, own);
    return own;
  };
  return {
    paper,
    ground: colour('--ground'),
    ink: colour('--ink'),
    grey: colour('--grey'),
    accent: colour('--accent'),
    shade: value('--ground') === value('--paper') ? 0.05 : 0.16,
    thin: width('--thin'),
    light: width('--light'),
    bold: width('--bold'),
    heavy: width('--heavy'),
    hatch: colour('--hatch'),
    dressOf: (fill) => ({ tint: tintOf(fill), hatch: fill?.hatch ?? null }),
  };
}

/** A colour of CSS as numbers; the browser's own pen knows how to read it. */
function colourOf(css: string, pen: CanvasRenderingContext2D | null): Colour {
  let text = css;
  if (pen) {
    pen.fillStyle = '#000000';
    pen.fillStyle = css;
    text = pen.fillStyle;
  }
  const hex = /^#(\w\w)(\w\w)(\w\w)/.exec(text);
  if (!hex) return [0, 0, 0];
  return hex.slice(1).map((two) => Number.parseInt(two, 16) / 255) as unknown as Colour;
}

/** Calls back whenever the scheme may have changed; returns the way to stop. */
export function watchScheme(changed: () => void): () => void {
  const observer = new MutationObserver(changed);
  observer.observe(document.documentElement, { attributeFilter: ['data-scheme'] });
  return () => observer.disconnect();
}
