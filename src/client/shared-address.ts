/** An address with these in its query, so that it can be shared; what is null is taken out. */
export function addressWith(address: string, changes: Readonly<Record<string, string | null>>): string {
  const url = new URL(address);
  for (const [name, value] of Object.entries(changes)) {
    if (value === null) url.searchParams.delete(name);
    else url.searchParams.set(name, value);
  }
  return url.href;
}
