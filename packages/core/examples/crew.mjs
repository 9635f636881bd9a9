// When there is light to work by.
import { clockTime, lightOn } from '@shellraise/core';

const field = { latitudeDeg: 52, longitudeDeg: 5, utcOffsetHours: 2 };
const { sun, civil } = lightOn(field, '2026-05-01');
console.log(`sunrise ${clockTime(sun.from)}, dusk ${clockTime(civil.to)}`);

// → sunrise 06:11, dusk 21:44
