// The built app and a browser, for scripts that take pictures of it.

import { chromium as playwright } from 'playwright-core';
import { build, buildApp } from './build.mjs';
import { chromium } from './chromium.mjs';

/** Screens: a laptop and a phone. */
export const screens = {
  laptop: { viewport: { width: 1440, height: 900 } },
  phone: { viewport: { width: 390, height: 844 }, hasTouch: true, isMobile: true },
};

/** A browser, the app being built; null, having said why, where one of them cannot be had. */
export async function browserOnBuiltApp() {
  const { path, reason } = chromium();
  if (!path) {
    console.error(reason);
    return null;
  }
  for (const step of [build, buildApp]) {
    const { code, output } = step();
    if (code === 0) continue;
    console.error(output.trim());
    return null;
  }
  return playwright.launch({
    executablePath: path,
    args: ['--no-sandbox', '--enable-unsafe-swiftshader', '--use-angle=swiftshader'],
  });
}
