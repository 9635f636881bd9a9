// Makes a draft say what another whole says, touching no more than what differs: so that a step holds
// what others changed, and not the project twice.

type Fields = Record<string, unknown>;

/** Changes a draft in place until it says what `to` says. A key that holds nothing is as good as none. */
export function layOn(draft: object, to: object): void {
  if (Array.isArray(draft) && Array.isArray(to)) layList(draft, to);
  else layFields(draft as Fields, to as Fields);
}

function layFields(draft: Fields, to: Fields): void {
  for (const key of Object.keys(draft))
    if (draft[key] !== undefined && to[key] === undefined) delete draft[key];
  for (const [key, value] of Object.entries(to))
    if (value !== undefined && !layInside(draft[key], value)) draft[key] = value;
}

/** False where something else is to take its place. */
function layInside(now: unknown, to: unknown): boolean {
  if (isFields(now) && isFields(to)) layFields(now, to);
  else if (Array.isArray(now) && Array.isArray(to)) layList(now, to);
  else return now === to;
  return true;
}

/** Rows alike at either end stay; those between are changed one for one, then added or taken out. */
function layList(draft: unknown[], to: readonly unknown[]): void {
  let head = 0;
  const shorter = Math.min(draft.length, to.length);
  while (head < shorter && same(draft[head], to[head])) head++;
  let tail = 0;
  while (tail < shorter - head && same(draft[draft.length - 1 - tail], to[to.length - 1 - tail]))
    tail++;
  const [left, wanted] = [draft.length - head - tail, to.length - head - tail];
  const both = Math.min(left, wanted);
  for (let i = head; i < head + both; i++) if (!layInside(draft[i], to[i])) draft[i] = to[i];
  if (left !== wanted)
    draft.splice(head + both, left - both, ...to.slice(head + both, head + wanted));
}

/** Whether two plain values say the same. */
export function same(a: unknown, b: unknown): boolean {
  if (Array.isArray(a))
    return Array.isArray(b) && a.length === b.length && a.every((item, i) => same(item, b[i]));
  if (!isFields(a) || !isFields(b)) return a === b;
  const keys = new Set([...Object.keys(a), ...Object.keys(b)]);
  return [...keys].every((key) => same(a[key], b[key]));
}

const isFields = (value: unknown): value is Fields =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
