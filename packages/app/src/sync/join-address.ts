// The join code in an address: `#join=ABCDE-FGHJK`, as the picture on the fence has it. What stands behind
// the # is sent to no server and goes into no log; it is taken out of the address at once all the same.

/** The code in an address's hash, as it was written; null where there is none. */
export function codeIn(hash: string): string | null {
  const match = /^#join=([^&]{1,60})$/.exec(hash);
  if (!match) return null;
  try {
    return decodeURIComponent(match[1] as string);
  } catch {
    return null;
  }
}

/** Where phones find the laptop: the page's own address where that is no phone's own self, else those that
 * the laptop tells. */
export function addressesFor(page: string, told: readonly string[]): readonly string[] {
  const { hostname, origin } = new URL(page);
  const own = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/.test(hostname);
  return own ? told : [...new Set([`${origin}/`, ...told])];
}

/** The plain http address of the same computer; undefined where the address is plain itself, or there is
 * none. */
export const plainOf = (base: string, all: readonly string[]): string | undefined =>
  base.startsWith('https:')
    ? all.find((one) => /^http:/.test(one) && new URL(one).hostname === new URL(base).hostname)
    : undefined;
