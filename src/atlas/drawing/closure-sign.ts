/** ISO 3864-1 signal red, as it is usually approximated on a screen. */
const RED = '#a01b22';

/** The general prohibition sign of ISO 7010 (P001): a red ring with a bar on white. What is forbidden stands beside it in words. */
export function closureSign(): string {
  return `<svg class="sign" viewBox="0 0 100 100" aria-hidden="true"><circle cx="50" cy="50" r="43" fill="#fff" stroke="${RED}" stroke-width="10"/><path stroke="${RED}" stroke-width="10" d="M20 20L80 80"/></svg>`;
}
