import { spawnSync } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';

/** What lme4 needs of a simulated log: one row a session. */
export interface PlainLog {
  readonly value: Float64Array;
  readonly event: Int32Array;
  readonly angler: Int32Array;
  readonly peg: Int32Array;
}

/** One thread of BLAS, as the engine uses one; the seconds are processor seconds of the fit alone. */
const SCRIPT = `
suppressMessages(library(lme4))
log <- read.csv(commandArgs(TRUE)[1])
for (name in c("event", "angler", "peg")) log[[name]] <- factor(log[[name]])
time <- system.time(lmer(y ~ 1 + (1 | event) + (1 | angler) + (1 | peg), log, REML = TRUE))
cat(time[["user.self"]] + time[["sys.self"]])
`;

/** Processor seconds lme4 takes for the plain model of a log; null where R or lme4 is not installed. */
export function lme4Seconds({ value, event, angler, peg }: PlainLog): number | null {
  const asked = spawnSync('Rscript', ['-e', 'library(lme4)'], { stdio: 'ignore' });
  if (asked.status !== 0) return null;
  const folder = mkdtempSync(join(tmpdir(), 'peg-atlas-lme4-'));
  try {
    const rows = Array.from(value, (y, i) => `${y},${event[i]},${angler[i]},${peg[i]}`);
    writeFileSync(join(folder, 'log.csv'), `y,event,angler,peg\n${rows.join('\n')}\n`);
    writeFileSync(join(folder, 'fit.R'), SCRIPT);
    const { stdout, status } = spawnSync('Rscript', [join(folder, 'fit.R'), join(folder, 'log.csv')], {
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'inherit'],
      env: { ...process.env, OPENBLAS_NUM_THREADS: '1', OMP_NUM_THREADS: '1' },
    });
    return status === 0 ? Number(stdout) : null;
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}
