/** Relative luminance of a colour as WCAG 2.2 defines it (W3C Recommendation, 5 October 2023). */
function relativeLuminance(hex: string): number {
  const [red, green, blue] = [1, 3, 5].map((start) => {
    const share = Number.parseInt(hex.slice(start, start + 2), 16) / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * red! + 0.7152 * green! + 0.0722 * blue!;
}

/** Contrast ratio of two colours as WCAG 2.2 defines it, 1 to 21. */
export function contrastRatio(one: string, other: string): number {
  const [light, dark] = [relativeLuminance(one), relativeLuminance(other)].sort((a, b) => b - a);
  return (light! + 0.05) / (dark! + 0.05);
}

/** A colour laid over another with some opacity, as browsers blend: by its sRGB values. */
export function laidOver(hex: string, ground: string, opacity: number): string {
  const channels = [1, 3, 5].map((start) => {
    const [front, back] = [hex, ground].map((each) => Number.parseInt(each.slice(start, start + 2), 16));
    return Math.round(front! * opacity + back! * (1 - opacity));
  });
  return `#${channels.map((channel) => channel.toString(16).padStart(2, '0')).join('')}`;
}
