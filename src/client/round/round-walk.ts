import { CLEARANCE_MEASURES } from '../../domain/clearance-measures.ts';
import { addDays, type Day } from '../../domain/day.ts';
import { pegKey } from '../../domain/peg.ts';
import {
  type GaugeDraft,
  type PegDraft,
  type PegField,
  type PhotoDraft,
  PLACE_MARK,
  type Round,
  type WholeRound,
} from './draft.ts';
import { applyPatch, type DraftPatch, patchBetween, patchesJoined } from './draft-patch.ts';
import type { RoundNews } from './round-news.ts';
import type { RoundStore } from './round-store.ts';
import type { SaveLine } from './save-line.ts';
import { localDay } from './today.ts';

/** One entry that can be taken back. */
interface Undo {
  readonly key: string;
  /** Which fields it touched: typing on in one field is one entry. */
  readonly touched: string;
  readonly patch: DraftPatch;
  readonly empty: PegDraft;
}

/**
 * The round that is being walked, in this tab: what is noted goes to the store as patches, so that two tabs write one
 * draft; each entry can be taken back; and what was noted stays here though the browser clears its store.
 */
export class RoundWalk {
  #round: Round;
  readonly #store: RoundStore;
  readonly #saving: SaveLine;
  readonly #drafts = new Map<string, PegDraft>();
  readonly #gauges = new Map<string, GaugeDraft>();
  #photos: readonly PhotoDraft[];
  readonly #pending = new Map<string, DraftPatch>();
  readonly #undos: Undo[] = [];
  readonly #tell: (news: RoundNews) => void;

  constructor(whole: WholeRound, store: RoundStore, saving: SaveLine, tell: (news: RoundNews) => void) {
    this.#round = whole.round;
    for (const draft of whole.pegs) this.#drafts.set(pegKey(draft.water, draft.peg), draft);
    for (const gauge of whole.gauges) this.#gauges.set(gauge.water, gauge);
    this.#photos = whole.photos;
    this.#store = store;
    this.#saving = saving;
    this.#tell = tell;
  }

  get round(): Round {
    return this.#round;
  }

  /** The day it is: the phone's, moved by what the bailiff said of its clock. */
  today(): Day {
    return addDays(localDay(), this.#round.clockDays ?? 0);
  }

  draft(water: string, peg: string): PegDraft | undefined {
    return this.#drafts.get(pegKey(water, peg));
  }

  gauge(water: string): GaugeDraft | undefined {
    return this.#gauges.get(water);
  }

  photosAt(water: string, peg: string): readonly PhotoDraft[] {
    return this.#photos.filter((photo) => photo.water === water && photo.peg === peg);
  }

  /** Everything noted, as this page has it: what is handed over where the store was cleared. */
  whole(): WholeRound {
    return {
      round: this.#round,
      pegs: [...this.#drafts.values()],
      gauges: [...this.#gauges.values()],
      photos: this.#photos,
    };
  }

  /** Notes an entry at a peg or a place. @param empty the draft where nothing is noted yet */
  note(empty: PegDraft, after: PegDraft): void {
    const key = pegKey(empty.water, empty.peg);
    const before = this.#drafts.get(key) ?? empty;
    const patch = patchBetween(before, after);
    const back = patchBetween(after, before);
    const touched = JSON.stringify([
      Object.keys(patch.fields ?? {}),
      Object.entries(patch.found ?? {}).map(([id, hazard]) => [id, hazard === null]),
    ]);
    const last = this.#undos.at(-1);
    // Letters typed one after the other into one field are one entry; the older way back leads further.
    if (last?.key === key && last.touched === touched && isText(patch)) {
      this.#undos[this.#undos.length - 1] = { ...last, patch: patchesJoined(back, last.patch) };
    } else this.#undos.push({ key, touched, patch: back, empty });
    this.#save(empty, patch);
  }

  /** Takes everything noted at one peg back; that can be undone too. */
  takeBack(empty: PegDraft): void {
    this.note(empty, empty);
  }

  get canUndo(): boolean {
    return this.#undos.length > 0;
  }

  /** Takes the last entry back. Returns the draft it was made in. */
  undo(): PegDraft | null {
    const last = this.#undos.pop();
    if (last === undefined) return null;
    this.#save(last.empty, last.patch);
    return this.#drafts.get(last.key) ?? null;
  }

  notePhoto(photo: PhotoDraft): void {
    this.#photos = [...this.#photos.filter(({ id }) => id !== photo.id), photo];
    this.#saving.save(`a photo of ${photo.peg}, ${photo.id}`, () => this.#store.savePhoto(photo));
  }

  removePhoto(id: string): void {
    this.#photos = this.#photos.filter((photo) => photo.id !== id);
    this.#saving.save(`the removal of photo ${id}`, () => this.#store.removePhoto(this.#round.ref, id));
  }

  noteGauge(gauge: GaugeDraft): void {
    const dated = { ...gauge, day: this.today() };
    this.#gauges.set(gauge.water, dated);
    this.#saving.save('the gauge', async () => {
      await this.#store.saveGauge(dated);
      this.#tell({ ref: dated.ref, water: dated.water });
    });
  }

  /** Changes the round itself: the role, the clock, where the bailiff is. */
  changeRound(change: Partial<Round>): void {
    this.#round = { ...this.#round, ...change };
    this.#saving.save('the round', async () => {
      this.#round = await this.#store.changeRound(this.#round.ref, (round) => ({ ...round, ...change }));
    });
  }

  /** Reads what another tab noted. Returns whether the round is still being walked. */
  async catchUp(): Promise<boolean> {
    const whole = await this.#store.whole(this.#round.ref).catch(() => undefined);
    if (whole === undefined) return true;
    this.#round = whole.round;
    for (const draft of whole.pegs) {
      const key = pegKey(draft.water, draft.peg);
      const waiting = this.#pending.get(key);
      this.#drafts.set(key, waiting === undefined ? draft : applyPatch(draft, waiting));
    }
    for (const gauge of whole.gauges) this.#gauges.set(gauge.water, gauge);
    this.#photos = [
      ...whole.photos,
      ...this.#photos.filter(({ id }) => !whole.photos.some((photo) => photo.id === id)),
    ];
    return whole.round.handedOver === undefined;
  }

  /** Puts everything this page holds back on the phone, after its store was cleared. */
  async putBack(): Promise<void> {
    await this.#store.saveWhole(this.whole());
    await this.#saving.retry();
  }

  #save(empty: PegDraft, patch: DraftPatch): void {
    const key = pegKey(empty.water, empty.peg);
    this.#drafts.set(key, applyPatch(this.#drafts.get(key) ?? empty, patch));
    const waiting = this.#pending.get(key);
    this.#pending.set(key, waiting === undefined ? patch : patchesJoined(waiting, patch));
    const { water, peg } = empty;
    this.#saving.save(
      peg.startsWith(PLACE_MARK)
        ? `what was noted at ${peg === PLACE_MARK ? water : peg.slice(PLACE_MARK.length)}`
        : `peg ${peg}`,
      () => this.#writePending(key),
    );
  }

  async #writePending(key: string): Promise<void> {
    const patch = this.#pending.get(key);
    const draft = this.#drafts.get(key);
    if (patch === undefined || draft === undefined) return;
    const saved = await this.#store.patchPeg(draft, patch);
    // What was typed while this was written waits for its own turn.
    if (this.#pending.get(key) === patch) {
      this.#pending.delete(key);
      this.#drafts.set(key, saved);
    }
    this.#tell({ ref: saved.ref, water: saved.water, peg: saved.peg });
  }
}

/** Fields that are typed letter by letter. */
const TYPED: ReadonlySet<string> = new Set<PegField>([
  'reason',
  ...CLEARANCE_MEASURES.map(({ key }) => key),
  'line-distance',
  'note',
  'notice-title',
  'notice-text',
]);

function isText({ fields = {}, found, lookedAt, at }: DraftPatch): boolean {
  if (lookedAt !== undefined || at !== undefined) return false;
  const names = Object.keys(fields);
  return found === undefined ? names.length === 1 && TYPED.has(names[0] ?? '') : names.length === 0;
}
