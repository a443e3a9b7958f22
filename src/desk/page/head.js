// What can be done with a file stays in view, however far one has read: the whole head where it is
// one line, else the tools alone.

/** `signal` ends it. */
export function headStays(head, signal) {
  const measure = () => {
    const tools = head.querySelector('.tools').getBoundingClientRect(), box = head.getBoundingClientRect();
    const name = head.firstElementChild.getBoundingClientRect(), oneLine = name.bottom > tools.top + 4;
    const above = Math.max(0, Math.round(tools.top - box.top - 6));
    document.documentElement.style.setProperty('--above', `${oneLine ? 0 : -above}px`);
    document.documentElement.style.setProperty('--stays', `${Math.round(box.height - (oneLine ? 0 : above))}px`);
  };
  const seen = new ResizeObserver(measure);
  seen.observe(head);
  signal.addEventListener('abort', () => seen.disconnect());
}
