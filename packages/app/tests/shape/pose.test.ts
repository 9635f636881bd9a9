import { normalize, subtract, type Vec3 } from '@shellraise/core';
import { describe, expect, it } from 'vitest';
import { panelsOfShell } from '../../src/drawing/shell-view/panels.ts';
import {
  dragged,
  firstView,
  insidePose,
  keyed,
  outsidePose,
  pickedPanel,
  rayThrough,
  roomOf,
  seenAt,
  zoomed,
} from '../../src/drawing/shell-view/pose.ts';
import { ball } from './notation.ts';

const panels = panelsOfShell(ball(3).shell);
const room = roomOf(panels);
const aspects = [0.5, 1, 1.8];

describe('the eye outside', () => {
  it('sees every corner in the picture, and fills it', () => {
    for (const aspect of aspects) {
      const pose = outsidePose(firstView, room, aspect);
      let most = 0;
      for (let i = 0; i < panels.corners.length; i += 3) {
        const point = [...panels.corners.subarray(i, i + 3)] as unknown as Vec3;
        const [x, y, depth] = seenAt(pose, aspect, point);
        expect(depth).toBeGreaterThan(pose.near);
        expect(depth).toBeLessThan(pose.far);
        most = Math.max(most, Math.abs(x), Math.abs(y));
      }
      expect(most).toBeLessThanOrEqual(1);
      expect(most).toBeGreaterThan(0.9);
    }
  });

  it('never rolls: what is above stands above', () => {
    for (const elevation of [-1.5, -0.3, 0.4, 1.5]) {
      const { right } = outsidePose({ ...firstView, elevation }, room, 1);
      expect(right[2]).toBeCloseTo(0, 12);
    }
  });

  it('a ray through where a point is seen meets the point (inverse)', () => {
    const pose = outsidePose({ azimuth: 2, elevation: 0.7, zoom: 1.6 }, room, 1.3);
    const point: Vec3 = [0.4, -1.1, 0.9];
    const [x, y] = seenAt(pose, 1.3, point);
    const ray = rayThrough(pose, 1.3, x, y);
    const way = normalize(subtract(point, pose.eye));
    ray.forEach((part, k) => {
      expect(part).toBeCloseTo(way[k] as number, 12);
    });
  });

  it('a drag turns, stops short of the poles, and a zoom stays within its bounds', () => {
    expect(dragged(firstView, 0.1, 0, false).azimuth).toBeLessThan(firstView.azimuth);
    expect(dragged(firstView, 0, 9, false).elevation).toBeLessThan(Math.PI / 2);
    expect(dragged(firstView, 0, -9, false).elevation).toBeGreaterThan(-Math.PI / 2);
    expect(zoomed(firstView, 1e6, false).zoom).toBe(8);
    expect(zoomed(firstView, 1e-6, false).zoom).toBe(0.6);
  });
});

describe('keys', () => {
  it('left and right undo each other, so do nearer and farther, and 0 puts it back', () => {
    const there = keyed(firstView, 'ArrowLeft', false);
    expect(there && keyed(there, 'ArrowRight', false)?.azimuth).toBeCloseTo(firstView.azimuth, 12);
    const near = keyed(firstView, '+', false);
    expect(near?.zoom).toBeGreaterThan(1);
    expect(near && keyed(near, '-', false)?.zoom).toBeCloseTo(1, 12);
    expect(there && keyed(there, '0', false)).toEqual(firstView);
  });

  it('other keys are left to the page', () => {
    for (const key of ['a', 'Tab', 'Enter', 'PageDown'])
      expect(keyed(firstView, key, false)).toBeNull();
  });
});

describe('picking', () => {
  it('finds the panel whose middle is looked at, for every panel that faces the eye', () => {
    const pose = outsidePose(firstView, room, 1);
    let seen = 0;
    panels.kind.forEach((_, rank) => {
      const corners = [...Array(3).keys()].map((i) => 3 * ((panels.start[rank] as number) + i));
      const middle = [0, 1, 2].map(
        (k) => corners.reduce((sum, at) => sum + (panels.corners[at + k] as number), 0) / 3,
      ) as unknown as Vec3;
      const ray = normalize(subtract(middle, pose.eye));
      const facing = ray.reduce(
        (sum, x, k) => sum + x * (panels.normals[3 * rank + k] as number),
        0,
      );
      if (facing > -0.02) return;
      seen += 1;
      expect(pickedPanel(panels, Infinity, pose.eye, ray)).toBe(rank);
    });
    expect(seen).toBeGreaterThan(50);
  });

  it('finds nothing beside the shell, and no panel that is not there yet', () => {
    const pose = outsidePose(firstView, room, 1);
    expect(pickedPanel(panels, Infinity, pose.eye, rayThrough(pose, 1, 0.99, 0.99))).toBeNull();
    const middle = rayThrough(pose, 1, 0, 0);
    const front = pickedPanel(panels, Infinity, pose.eye, middle) as number;
    expect(pickedPanel(panels, front, pose.eye, middle)).not.toBe(front);
  });
});

describe('the eye inside', () => {
  it('stands on the floor in the middle, at 1.6 m, or lower where the room is low', () => {
    expect(insidePose(firstView, room).eye).toEqual([0, 0, room.low + 1.6]);
    const low = { ...room, low: 0, high: 2 };
    expect(insidePose(firstView, low).eye[2]).toBeCloseTo(0.8, 12);
  });
});
