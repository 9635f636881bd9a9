// A strict reader of the XML that the writer may use: declaration, elements, attributes in double
// quotes, text, the five named entities and numeric ones. Throws on anything not well formed.

export interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: readonly (Element | string)[];
}

export function readXml(source: string): Element {
  let at = 0;
  const fail = (what: string): never => {
    throw new Error(`${what} at ${at}: ${source.slice(at, at + 40)}`);
  };
  const take = (pattern: RegExp): RegExpExecArray | null => {
    const sticky = new RegExp(pattern.source, 'uy');
    sticky.lastIndex = at;
    const found = sticky.exec(source);
    if (found) at += found[0].length;
    return found;
  };
  const decode = (words: string): string => {
    if (/[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/u.test(words))
      fail('forbidden');
    return words.replace(/&([^;]*);?/g, (whole, name: string) => {
      const known = { amp: '&', lt: '<', gt: '>', quot: '"', apos: "'" }[name];
      const code = /^#(\d+)$/.exec(name);
      if (!whole.endsWith(';') || (known === undefined && code === null)) fail(`entity ${whole}`);
      return known ?? String.fromCodePoint(Number(code?.[1]));
    });
  };
  const element = (): Element => {
    const name = take(/<([a-zA-Z][\w-]*)/)?.[1] ?? fail('no element');
    const attributes: Record<string, string> = {};
    for (
      let found = take(/\s+([a-zA-Z][\w:-]*)="([^"<]*)"/);
      found;
      found = take(/\s+([a-zA-Z][\w:-]*)="([^"<]*)"/)
    ) {
      const key = found[1] as string;
      if (key in attributes) fail(`${key} twice`);
      attributes[key] = decode(found[2] as string);
    }
    if (take(/\s*\/>/)) return { name, attributes, children: [] };
    if (!take(/\s*>/)) fail(`<${name}> is not closed`);
    const children: (Element | string)[] = [];
    for (;;) {
      const words = take(/[^<]+/);
      if (words) children.push(decode(words[0]));
      else if (take(new RegExp(`</${name}\\s*>`))) return { name, attributes, children };
      else children.push(element());
    }
  };
  take(/<\?xml version="1\.0" encoding="UTF-8"\?>\s*/) ?? fail('no declaration');
  const root = element();
  take(/\s*/);
  if (at !== source.length) fail('more after the root');
  return root;
}

/** Every element, the root first. */
export function allElements(root: Element): Element[] {
  return [
    root,
    ...root.children.flatMap((child) => (typeof child === 'string' ? [] : allElements(child))),
  ];
}
