// A spreadsheet as somebody brings it: 180 panels of two kinds that close into a ball 4.4 m across,
// twelve of them measured one by one, and one of these read wrong: panel 004, side 2.

/** The reading that is wrong, and what the tape says when it is held there once more. */
export const wrong = { tag: '004', side: 2, reads: '786 mm', expected: '767 mm', again: '766' };

/** The ball that it closes into. */
export const ball = { across: '4.400 m', panels: 180 };

/** The file. */
export const orchardCsv = `\
tag,mark,count,side1 mm,side2 mm,side3 mm,seen from
001,A,,768,767,887,outside
002,A,,767,767,888,outside
003,A,,767,767,888,outside
004,A,,768,786,888,outside
005,A,,766,768,887,outside
006,A,,767,767,887,outside
,A,54,767,767,888,outside
007,B,,888,908,908,outside
008,B,,888,908,907,outside
009,B,,887,908,908,outside
010,B,,887,907,907,outside
011,B,,888,907,906,outside
012,B,,888,908,907,outside
,B,114,888,907,907,outside
`;
