import { shortDigest } from '../../../src/client/offline/digest.ts';
import { checkedText, LIST_PATH, type ListedFile, NOW_PATH } from '../../../src/client/offline/offline-list.ts';
import type { NowFile } from '../../../src/domain/now-file.ts';
import type { PegFacts } from '../../../src/domain/peg-verdict.ts';

export const PEGS = ['1', '2', '3'] as const;

/** How a made-up guide has a peg: open, closed by its record, or closed by a notice from one day to another. */
export type PegPlan = 'open' | 'closed' | { readonly from: string; readonly until: string };

/** A guide as its files lie on a host. */
export interface MadeGuide {
  readonly edition: string;
  readonly day: string;
  readonly plans: readonly PegPlan[];
  readonly files: ReadonlyMap<string, Uint8Array>;
}

/** Whether a plan closes its peg on a day: the model's own rule, apart from the code under test. */
export function isClosedOn(plan: PegPlan | undefined, day: string): boolean {
  if (plan === undefined || plan === 'open') return false;
  return plan === 'closed' || (plan.from <= day && day <= plan.until);
}

/** Writes a small guide of one water with three pegs: a first page, a sheet a peg, a script, a picture and a bailiff's page. */
export async function madeGuide(day: string, plans: readonly PegPlan[], remark: string): Promise<MadeGuide> {
  const files = new Map<string, Uint8Array>();
  const words = (index: number) => `Peg ${PEGS[index]} is ${isClosedOn(plans[index], day) ? 'closed' : 'open'}.`;
  const page = (text: string) =>
    bytesOf(
      `<html><body data-guide-base="/" data-guide-day="${day}"><p>Data to ${day}</p><div data-standing></div>${text}</body></html>`,
    );
  files.set('', page(`${PEGS.map((_peg, index) => words(index)).join(' ')} ${remark}`));
  for (const [index, peg] of PEGS.entries()) files.set(`pool/${peg}/`, page(words(index)));
  files.set('rules/', page('Keep off the ice.'));
  files.set('404.html', page('No such page.'));
  files.set('bank-round/', page('Walk the bank.'));
  files.set('script.js', bytesOf(`say("${remark}")`));
  files.set('photos/one.jpg', bytesOf('a picture'));
  const listed: ListedFile[] = [];
  for (const [path, bytes] of files) listed.push([path, await shortDigest(bytes), setOf(path)]);
  const pegs = Object.fromEntries(plans.map((plan, index) => [`pool/${PEGS[index]}`, factsOf(plan)]));
  const edition = await shortDigest(JSON.stringify([day, pegs, listed]));
  const now: NowFile = { edition, day, pegs, notices: [], marks: {} };
  const signedNow = bytesOf(JSON.stringify({ check: await shortDigest(JSON.stringify(now)), now }));
  files.set(NOW_PATH, signedNow);
  const list = { edition, day, files: [[NOW_PATH, await shortDigest(signedNow), 'first'] as const, ...listed] };
  files.set(LIST_PATH, bytesOf(JSON.stringify({ ...list, check: await shortDigest(checkedText(list)) })));
  return { edition, day, plans, files };
}

function setOf(path: string): string {
  if (path.startsWith('photos/')) return 'pictures';
  if (path.startsWith('bank-round/')) return 'bank-round';
  return path.startsWith('pool/') || path === 'rules/' ? 'guide' : 'first';
}

function factsOf(plan: PegPlan): PegFacts {
  if (plan === 'open') return { status: 'open', standOffMetres: 30 };
  if (plan === 'closed') return { status: 'closed', reason: 'the <boards> are off & gone', standOffMetres: 30 };
  return { status: 'open', standOffMetres: 30, closures: [{ notice: 'works', title: 'Works', ...plan }] };
}

export function bytesOf(text: string): Uint8Array {
  return new TextEncoder().encode(text);
}
