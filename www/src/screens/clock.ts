// Times as the screens show them.

/** The device's own time; with the date when it is not today's. */
export function clock(iso: string, now: Date = new Date()): string {
  const at = new Date(iso);
  const two = (n: number) => String(n).padStart(2, "0");
  const time = `${two(at.getHours())}:${two(at.getMinutes())}`;
  if (at.toDateString() === now.toDateString()) return time;
  return `${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())} ${time}`;
}
