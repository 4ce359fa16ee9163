/**
 * Colours shared by every example. Named colours are those of Okabe and Ito (Color Universal Design, 2008), told apart
 * with every common kind of colour vision; the ramps go from dark to light, so that order survives in grey print.
 */
const DARK = '#1d2733';
/** A page that sets the variables shows the same chart on paper of another colour. */
export const INK: string = `var(--ink, ${DARK})`;
export const MUTED = 'var(--muted, #5b6775)';
export const GRID = 'var(--grid, #dde3e9)';
export const PAPER = 'var(--paper, #ffffff)';
export const PANEL = 'var(--panel, #f5f7f9)';

/** One shot among many. */
export const FAINT = 'var(--faint, #9aa7b4)';
/** Mown grass and trees seen from above. */
export const FAIRWAY = 'var(--fairway, #dcefe0)';
export const TREES = 'var(--trees, #e4e1d6)';
/** Pale fills for areas and intervals, behind lines of their colour. */
export const PALE_BLUE = 'var(--pale-blue, #c2d8e6)';
export const PALE_GREEN = 'var(--pale-green, #d7efe6)';
export const PALE_VERMILION = 'var(--pale-vermilion, #f9e3d5)';
export const PALE_ORANGE = 'var(--pale-orange, #fae9c5)';

export const BLUE = '#0072b2';
export const VERMILION = '#d55e00';
export const GREEN = '#009e73';
export const ORANGE = '#e69f00';
export const PURPLE = '#aa4a88';

/** Anchors of the ramp for ordered groups, dark to light: legible as a line on white at both ends. */
const ORDERED: readonly string[] = ['#1b1f5e', '#1f5a96', '#15908f', '#62a03a', '#d9a31c'];
/** Anchors of the ramp for filled contours, pale to deep: dark text and marks stay legible on most of it. */
const FILLED: readonly string[] = ['#fbfaf0', '#d8ebd5', '#a3d3cd', '#62aec4', '#2f7fb0', '#1f4e86'];

/** `count` colours for groups with an order, such as speed bands from slow to fast. */
export function orderedColours(count: number): readonly string[] {
  return Array.from({ length: count }, (_, i) => alongRamp(ORDERED, count === 1 ? 0.3 : i / (count - 1)));
}

/** Colour of a filled contour, for a share from 0 (low) to 1 (high). */
export function filledColour(share: number): string {
  return alongRamp(FILLED, Math.min(1, Math.max(0, share)));
}

/** The same ramp on dark paper, where it goes from pale to deep. */
const ORDERED_ON_DARK: readonly string[] = ['#b9bdf5', '#7fb4e6', '#4fbdb9', '#8cc267', '#e0b348'];

/** {@link orderedColours} that follow the scheme of the page. */
export function orderedColoursOfScheme(count: number): readonly string[] {
  const at = (anchors: readonly string[], i: number): string =>
    alongRamp(anchors, count === 1 ? 0.3 : i / (count - 1));
  return Array.from({ length: count }, (_, i) => `light-dark(${at(ORDERED, i)}, ${at(ORDERED_ON_DARK, i)})`);
}

/** The colour darkened for text, so that light ones stay legible on white; one for dark paper is light enough. */
export function textColour(colour: string): string {
  const [, light, dark] = /^light-dark\((#\w+), (#\w+)\)$/.exec(colour) ?? [];
  if (light === undefined) return alongRamp([colour, DARK], 0.35);
  return `light-dark(${alongRamp([light, DARK], 0.35)}, ${dark})`;
}

function alongRamp(anchors: readonly string[], share: number): string {
  const place = share * (anchors.length - 1);
  const index = Math.min(Math.floor(place), anchors.length - 2);
  const from = channels(anchors[index] ?? DARK);
  const to = channels(anchors[index + 1] ?? DARK);
  const mixed = from.map((value, i) => Math.round(value + (place - index) * ((to[i] ?? value) - value)));
  return `#${mixed.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}

/** Red, green and blue of a colour, 0 to 255. */
export function channels(colour: string): readonly number[] {
  return [1, 3, 5].map((at) => Number.parseInt(colour.slice(at, at + 2), 16));
}
