// JSON as a person would lay it out: what fits on a line stays on it.

const width = 150;

/** The value as text, ending in a newline. */
export const pretty = (value) => `${lay(value, '')}\n`;

function lay(value, indent) {
  const line = flat(value);
  if (indent.length + line.length <= width || value === null || typeof value !== 'object')
    return line;
  const inner = `${indent}  `;
  if (Array.isArray(value))
    return `[\n${value.map((item) => inner + lay(item, inner)).join(',\n')}\n${indent}]`;
  const fields = Object.entries(value).map(
    ([key, item]) => `${inner}${JSON.stringify(key)}: ${lay(item, inner)}`,
  );
  return `{\n${fields.join(',\n')}\n${indent}}`;
}

function flat(value) {
  if (Array.isArray(value)) return `[${value.map(flat).join(', ')}]`;
  if (value !== null && typeof value === 'object')
    return `{ ${Object.entries(value)
      .map(([key, item]) => `${JSON.stringify(key)}: ${flat(item)}`)
      .join(', ')} }`;
  return JSON.stringify(value);
}
