import { h } from './dom.js';

/** Letters of the sheet are of these sizes [pt]. */
const SMALLEST = 7;
const LARGEST = 11.8;
/** Height that A4 and Letter both have within their margins, with a little to spare [mm]. */
const ONE_SIDE = 250;
const PIXELS_PER_MM = 96 / 25.4;

/** The largest letters with which this sheet takes one printed side, as a CSS length. */
export function sizeForOneSide(sheet: HTMLElement): string {
  const paper = h('div', { class: 'measure', 'aria-hidden': 'true' }, sheet.cloneNode(true));
  // Pictures are as high without what is drawn in them, and laid out in no time.
  for (const picture of paper.querySelectorAll('svg')) picture.replaceChildren();
  document.body.append(paper);
  const fits = (size: number): boolean => {
    paper.style.setProperty('--paper-size', `${size}pt`);
    return paper.offsetHeight <= ONE_SIDE * PIXELS_PER_MM;
  };
  // Each trial lays the sheet out anew, so the sizes are halved and not tried one by one.
  let [fitting, tooLarge] = [SMALLEST, LARGEST];
  while (tooLarge - fitting > 0.2) {
    const middle = (fitting + tooLarge) / 2;
    if (fits(middle)) fitting = middle;
    else tooLarge = middle;
  }
  paper.remove();
  return `${fitting.toFixed(1)}pt`;
}
