/** Whether this browser keeps what is noted of a round or a match, as far as it says so, in a sentence. Asks it to. */
export async function storageWords(
  storage: StorageManager | undefined = navigator.storage,
  of: 'round' | 'match' = 'round',
): Promise<string> {
  const handOver = `Hand the ${of} over the same day.`;
  if (typeof storage?.persist !== 'function') {
    return `This browser does not say whether it keeps what is noted here. ${handOver}`;
  }
  try {
    if ((await storage.persisted()) || (await storage.persist())) {
      return 'This browser keeps what is noted here until you delete it, or clear its data for this site.';
    }
  } catch {
    return `This browser does not say whether it keeps what is noted here. ${handOver}`;
  }
  return `This browser has not promised to keep what is noted here: it may clear it when the phone runs short, and does when a private window is closed. ${handOver}`;
}
