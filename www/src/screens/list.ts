// Every screen by the first part of its address; "" is the first screen.
// The tests hold one entry for each.
export const screens = [
  "",
  "size",
  "pick-rig",
  "pick-pile",
  "limits",
  "form",
  "piles",
  "fleet",
  "pile",
  "working",
  "convert",
  "card",
  "more",
  "jobs",
  "job",
  "incoming",
  "joined",
  "choices",
  "history",
  "compare",
  "paste",
  "keep",
  "aside",
  "settings",
  "about",
] as const;

export type ScreenName = (typeof screens)[number];
