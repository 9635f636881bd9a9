// A vitest reporter that leaves the counts, what was skipped and why, and how long each file took, in a
// file for test.mjs.

import { writeFileSync } from 'node:fs';

export default class Counts {
  onTestRunEnd(modules, errors) {
    const counts = { passed: 0, failed: errors.length, skipped: [], files: [] };
    for (const module of modules) {
      // A file that could not be loaded has no tests to count.
      if (module.errors().length > 0) counts.failed += 1;
      const { duration } = module.diagnostic();
      counts.files.push({ name: module.relativeModuleId, seconds: duration / 1000 });
      for (const test of module.children.allTests()) {
        const result = test.result();
        if (result.state === 'passed') counts.passed += 1;
        else if (result.state === 'failed') counts.failed += 1;
        else counts.skipped.push({ title: test.fullName, reason: result.note ?? '' });
      }
    }
    writeFileSync(process.env.SHELLRAISE_COUNTS, JSON.stringify(counts));
  }
}
