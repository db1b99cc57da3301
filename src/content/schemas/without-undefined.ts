/** A record whose fields that may be undefined are optional instead, as `exactOptionalPropertyTypes` tells them apart. */
export type WithoutUndefined<T> = {
  [K in keyof T as undefined extends T[K] ? never : K]: T[K];
} & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** A copy of a record without the fields that are undefined. */
export function withoutUndefined<T extends object>(record: T): WithoutUndefined<T> {
  const entries = Object.entries(record).filter(([, value]) => value !== undefined);
  return Object.fromEntries(entries) as WithoutUndefined<T>;
}
