/**
 * Does work one piece a frame, in order, so that many answers that come at once do not hold up a click or a key.
 */
export function oneByOne(): { readonly add: (work: () => void) => void; readonly clear: () => void } {
  let waiting: (() => void)[] = [];
  let planned = false;
  const next = (): void => {
    planned = false;
    waiting.shift()?.();
    plan();
  };
  // A frame that is not shown never comes, so a timer stands in for it in a hidden tab.
  const plan = (): void => {
    if (planned || waiting.length === 0) return;
    planned = true;
    if (document.visibilityState === 'visible') requestAnimationFrame(() => setTimeout(next));
    else setTimeout(next);
  };
  return {
    add: (work) => {
      waiting.push(work);
      plan();
    },
    clear: () => {
      waiting = [];
    },
  };
}
