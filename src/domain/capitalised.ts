/** Words with a capital letter in front, as a label or a sentence begins. */
export function capitalised(words: string): string {
  return `${words.slice(0, 1).toUpperCase()}${words.slice(1)}`;
}
