import { existsSync, readFileSync } from 'node:fs';

/** Adds up the runner's own reports and prints one line: `N passed, N failed` and, where there are some, `N skipped`. */
interface Report {
  readonly numPassedTests: number;
  readonly numFailedTests: number;
  readonly numPendingTests: number;
  readonly numTotalTests: number;
  readonly success: boolean;
}

const total = { passed: 0, failed: 0, skipped: 0 };
let whole = true;
for (const file of process.argv.slice(2)) {
  if (!existsSync(file)) {
    whole = false;
    continue;
  }
  const report = JSON.parse(readFileSync(file, 'utf8')) as Report;
  total.passed += report.numPassedTests;
  total.failed += report.numFailedTests;
  total.skipped += report.numPendingTests;
  whole &&= report.success;
}
if (total.passed === 0 || total.failed > 0) whole = false;
const skipped = total.skipped > 0 ? `, ${total.skipped} skipped` : '';
console.log(`${total.passed} passed, ${total.failed} failed${skipped}`);
process.exitCode = whole ? 0 : 1;
