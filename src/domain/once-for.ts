/**
 * A work whose answer is kept for each key that it was asked about, as long as the key lives: for what many pages of a guide
 * ask of the same venue, which never changes once read.
 */
export function onceFor<Key extends object, Answer>(work: (key: Key) => Answer): (key: Key) => Answer {
  const answers = new WeakMap<Key, { readonly answer: Answer }>();
  return (key) => {
    const known = answers.get(key);
    if (known !== undefined) return known.answer;
    const answer = work(key);
    answers.set(key, { answer });
    return answer;
  };
}
