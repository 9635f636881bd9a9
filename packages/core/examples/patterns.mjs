// A paper net of the half ball on A4, 1 : 20, folded and glued by tabs of 5 mm.
import { paperNet } from '@shellraise/core';
import { halfBall } from './half-ball.mjs';

const net = paperNet(halfBall, { scale: 20, room: [190, 277], tab: 5, words: [], leftOut: [] });
console.log(net.ok && `${net.pieces.length} pieces on ${net.sheets} sheets`);

// → 6 pieces on 6 sheets
