// What a gust presses with, and Beaufort's scale beside it.
import { beaufortForce, gustPressure } from '@shellraise/core';

for (const gust of [5, 10, 20]) console.log(`${gust} m/s: ${gustPressure(gust, 1.25)} Pa`);
const { name, to, onLand } = beaufortForce(6);
console.log(`${name}: up to ${to} m/s. ${onLand}`);

// → 5 m/s: 15.625 Pa
// → 10 m/s: 62.5 Pa
// → 20 m/s: 250 Pa
// → strong breeze: up to 13.8 m/s. large branches move, wires whistle
