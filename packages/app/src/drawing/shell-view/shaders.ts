// The shaders of a hidden-line drawing: panels in their tint, darker as they turn away, plain where
// their inner face is seen; lines as wide as what they mean; hubs as small rings. A panel that was
// laid just now, or is selected, takes on the accent.

const common = `
uniform float shown;
uniform float selected;
uniform float kindMark;
uniform vec3 accent;
`;

export const panelVertex = `
attribute vec3 tint;
attribute float rank;
attribute float kind;
attribute vec3 outward;
attribute vec2 spot;
attribute vec4 ruling;
attribute vec3 dots;
${common}
uniform float growing;
varying vec2 vSpot;
varying vec4 vRuling;
varying vec3 vDots;
varying vec3 vTint;
varying float vLit;
varying float vMark;
void main() {
  vTint = tint;
  vSpot = spot;
  vRuling = ruling;
  vDots = dots;
  vec3 seen = normalize((viewMatrix * vec4(outward, 0.0)).xyz);
  vLit = dot(seen, normalize(vec3(-0.35, 0.55, 0.75)));
  float fresh = growing * clamp(1.0 - (shown - 1.0 - rank) / 7.0, 0.0, 1.0);
  float marked = kind == kindMark ? 0.3 : 0.0;
  vMark = rank == selected ? 0.45 : max(fresh * 0.55, marked);
  gl_Position = projectionMatrix * viewMatrix * vec4(position, 1.0);
}`;

/** The hatches of the flat drawings, laid on each panel with its upward side up: `spot` runs in tiles
 * of the hatch along its lines and across; `ruling` has the one or two heights of lines in the tile
 * (under 0: none), whether they cross (1) and the drawn share; `dots` the radius of dots (0: none), of
 * a ring its pen (0: filled), and half the pen of lines, all in tiles. Where a tile is only a few
 * pixels wide the hatch fades: it would shimmer. */
export const panelFragment = `
varying vec2 vSpot;
varying vec4 vRuling;
varying vec3 vDots;
uniform vec3 hatch;
float pen(float gap, float halfPen, float pixel) {
  float wide = max(halfPen, 0.5 * pixel);
  return clamp((wide - gap) / pixel + 0.5, 0.0, 1.0) * halfPen / wide;
}
float line(float at, float height, float halfPen, float pixel) {
  return height < 0.0 ? 0.0 : pen(abs(fract(at - height + 0.5) - 0.5), halfPen, pixel);
}
float hatching() {
  vec2 pixels = fwidth(vSpot);
  float pixel = max(max(pixels.x, pixels.y), 0.0001);
  float fade = clamp((1.0 / pixel - 2.5) / 3.0, 0.0, 1.0);
  if (fade == 0.0) return 0.0;
  float dash = fract(vSpot.x) < vRuling.w ? 1.0 : 0.0;
  float along = max(line(vSpot.y, vRuling.x, vDots.z, pixel), line(vSpot.y, vRuling.y, vDots.z, pixel));
  float across = vRuling.z * line(vSpot.x, vRuling.x, vDots.z, pixel);
  vec2 cell = fract(vSpot);
  float off = min(length(cell - 0.25), length(cell - 0.75));
  float dot = vDots.x <= 0.0 ? 0.0 : vDots.y > 0.0 ? pen(abs(off - vDots.x), vDots.y, pixel) : pen(off, vDots.x, pixel);
  return fade * max(max(along * dash, across), dot);
}
uniform vec3 accent;
uniform vec3 ink;
uniform vec3 back;
uniform float shade;
uniform float inside;
varying vec3 vTint;
varying float vLit;
varying float vMark;
void main() {
  bool outer = gl_FrontFacing;
  bool face = inside > 0.5 ? !outer : outer;
  float lit = outer ? vLit : -vLit;
  vec3 plain = face ? vTint : back;
  if (face) plain = mix(plain, hatch, 0.6 * hatching());
  vec3 own = mix(plain, ink, shade * clamp(0.55 - 0.55 * lit, 0.0, 1.0));
  gl_FragColor = vec4(mix(own, accent, vMark), 1.0);
}`;

/** One line is a quad that faces the picture; both of its ends are cut off before the eye. */
export const lineVertex = `
attribute vec3 from;
attribute vec3 to;
attribute vec3 normalA;
attribute vec3 normalB;
attribute vec2 ranks;
attribute vec2 kinds;
${common}
uniform vec3 ink;
uniform vec3 grey;
uniform vec3 eye;
uniform vec2 halfSize;
uniform float inside;
uniform float nearest;
uniform vec4 widths;
varying vec3 vColour;
void main() {
  vec4 a = viewMatrix * vec4(from, 1.0);
  vec4 b = viewMatrix * vec4(to, 1.0);
  if (a.z > -nearest && b.z > -nearest) { gl_Position = vec4(2.0, 2.0, 2.0, 1.0); return; }
  if (a.z > -nearest) a = mix(b, a, (b.z + nearest) / (b.z - a.z));
  if (b.z > -nearest) b = mix(a, b, (a.z + nearest) / (a.z - b.z));
  bool open = ranks.y < 0.0 || ranks.y >= shown;
  vec3 sight = eye - from;
  bool frontA = dot(normalA, sight) > 0.0;
  bool frontB = open ? frontA : dot(normalB, sight) > 0.0;
  bool away = inside > 0.5 ? (frontA && frontB) : (!frontA && !frontB);
  float width = away ? widths.x * 0.8 : widths.x;
  vec3 colour = away ? mix(grey, ink, 0.2) : ink;
  float lift = 1.0;
  if (!open && frontA != frontB) { width = widths.y; }
  if (open) { width = ranks.y < 0.0 ? widths.w : widths.z; colour = ink; }
  bool ofKind = kinds.x == kindMark || (!open && kinds.y == kindMark);
  if (ofKind) { colour = accent; width = max(width, widths.y); lift = 1.2; }
  if (ranks.x == selected || (!open && ranks.y == selected)) {
    colour = accent; width = widths.w; lift = 1.5;
  }
  vColour = colour;
  vec4 ca = projectionMatrix * a;
  vec4 cb = projectionMatrix * b;
  vec2 run = (cb.xy / cb.w - ca.xy / ca.w) * halfSize;
  vec2 along = length(run) > 0.0001 ? normalize(run) : vec2(1.0, 0.0);
  vec4 at = position.x < 0.5 ? ca : cb;
  vec2 shift = vec2(-along.y, along.x) * position.y + along * (2.0 * position.x - 1.0) * 0.5;
  at.xy += shift * 0.5 * width / halfSize * at.w;
  at.z -= 0.0016 * lift * at.w;
  gl_Position = at;
}`;

export const lineFragment = `
varying vec3 vColour;
void main() { gl_FragColor = vec4(vColour, 1.0); }`;

export const hubVertex = `
uniform float size;
void main() {
  vec4 at = projectionMatrix * viewMatrix * vec4(position, 1.0);
  at.z -= 0.002 * at.w;
  gl_Position = at;
  gl_PointSize = size;
}`;

export const hubFragment = `
uniform vec3 paper;
uniform vec3 ink;
uniform float size;
uniform float ring;
void main() {
  float r = length(gl_PointCoord - 0.5) * size;
  float edge = 0.5 * size - 0.5;
  if (r > edge + 0.5) discard;
  float alpha = clamp(edge + 0.5 - r, 0.0, 1.0);
  float inner = clamp(edge - ring - r + 0.5, 0.0, 1.0);
  gl_FragColor = vec4(mix(ink, paper, inner), alpha);
}`;
