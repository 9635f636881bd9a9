import { describe, expect, it } from 'vitest';
import { lengthsIn } from '../../src/ui/lengths.ts';

describe('lengths on the screen', () => {
  it('stand in the chosen system with the other as echo', () => {
    expect(lengthsIn('metric').side(1.1033)).toBe('1103.5 mm');
    expect(lengthsIn('metric').echo(1.1033)).toBe('43 7/16"');
    expect(lengthsIn('inch').side(1.1033)).toBe('43 7/16"');
    expect(lengthsIn('inch').large(3.65)).toBe(`11' 11 11/16"`);
  });

  it('drop a nought after the point', () => {
    expect(lengthsIn('metric').side(1.1)).toBe('1100 mm');
  });

  it('give misfits their sign', () => {
    expect(lengthsIn('metric').off(-0.0091)).toBe('−9.1 mm');
    expect(lengthsIn('inch').off(0.0091)).toBe('+0.36 in');
  });
});
