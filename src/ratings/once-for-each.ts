/** Makes something of every key once: of tens of thousands of sessions most are alike, and what is alike shares one thing. */
export function onceForEach<Key, Made>(make: (key: Key) => Made): (key: Key) => Made {
  const made = new Map<Key, Made>();
  return (key) => {
    if (made.has(key)) return made.get(key)!;
    const now = make(key);
    made.set(key, now);
    return now;
  };
}
