/** A hazard as its record writes it, unchecked: every value is text, a place of `12` too. */
export interface RecordedHazard {
  readonly index: number;
  readonly kind: string;
  readonly place: string;
  readonly mappedAs: string | null;
  readonly severity: string;
  readonly likelihood: string;
  readonly foundOn: string;
  readonly checkedOn: string | null;
  readonly worsenedOn: string | null;
  readonly controlledOn: string | null;
  readonly clearedOn: string | null;
  /** Names of all its fields. */
  readonly fields: ReadonlySet<string>;
}

/** The hazards of a record. @param listed its `hazards`, every value as it is written */
export function readHazards(listed: unknown): RecordedHazard[] {
  if (!Array.isArray(listed)) return [];
  return listed.map((item: unknown, index) => {
    const fields = (typeof item === 'object' && item !== null ? item : {}) as Record<string, unknown>;
    const text = (key: string): string | null => {
      const value = fields[key];
      return typeof value === 'string' && value !== '' ? value : null;
    };
    return {
      index,
      kind: text('kind') ?? '',
      place: text('place') ?? '',
      mappedAs: text('mapped-as'),
      severity: text('severity') ?? '',
      likelihood: text('likelihood') ?? '',
      foundOn: text('found-on') ?? '',
      checkedOn: text('checked-on'),
      worsenedOn: text('worsened-on'),
      controlledOn: text('controlled-on'),
      clearedOn: text('cleared-on'),
      fields: new Set(Object.keys(fields)),
    };
  });
}
