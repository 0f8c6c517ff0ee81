package job

// outsideFields describe what stands beside "now" and "records": who said what
// and when, and what was signed. They are written by the product, not typed
// into forms.
//
// Everything here only grows: a remark is answered by another, a signature is
// withdrawn by striking it out with a reason. Of signatures only the release to
// cut is written yet; remarks and closed copies are reserved, and of what a
// digest is taken is for examples/FORMAT.md to say before anything writes one.
var outsideFields = join([]Field{
	words("/writer/name"), words("/writer/version"),

	// A sitting is one opening of one copy; "seen" says how many entries of
	// every other sitting this copy had.
	words("/sittings/*/who"), words("/sittings/*/device"), instant("/sittings/*/on"), words("/sittings/*/from"),
	number("/sittings/*/seen/*"),
	needed(number("/sittings/*/entries/#/s")), instant("/sittings/*/entries/#/at"),
	needed(Field{Pattern: "/sittings/*/entries/#/patch", Kind: Patch}),
	{Pattern: "/sittings/*/entries/#/was", Kind: Any, Map: true},
	words("/sittings/*/entries/#/why"),

	// Texts that could not be read, by the path of their field.
	words("/unread/*"),
	// Requests that a host had journalled and no core had taken in yet.
	words("/pending/#/verb"),
	// What a second copy says otherwise about something that cannot be
	// contested, by its path.
	{Pattern: "/disputed/*", Kind: Any, List: true},

	// The four signatures. Each signs the entries and record lines counted in
	// "seen" and "records", and states no capacity.
	needed(choice("/signatures/*/kind", "criteria", "record", "disposition", "release to cut")),
	needed(words("/signatures/*/name")), words("/signatures/*/role"), instant("/signatures/*/on"), words("/signatures/*/sentence"),
	number("/signatures/*/seen/*"), number("/signatures/*/records/*/*/lines"), number("/signatures/*/records/*/*/events"),
	words("/signatures/*/piles/*"), // pile to what is signed of it, mostly blank
	words("/signatures/*/items/*"), // open item to its disposition
	{Pattern: "/signatures/*/digest", Kind: Digest},

	instant("/remarks/*/at"), words("/remarks/*/who"), words("/remarks/*/role"), words("/remarks/*/about"),
	needed(words("/remarks/*/says")), reference("/remarks/*/answers", "remarks"),

	// A closed copy: what the file held when it was handed over.
	needed(instant("/closed/*/at")), words("/closed/*/who"), words("/closed/*/role"), words("/closed/*/sentence"),
	needed(Field{Pattern: "/closed/*/digest", Kind: Digest}),
	number("/closed/*/seen/*"), number("/closed/*/records/*/*/lines"), number("/closed/*/records/*/*/events"),
}, struck("/signatures/*"), struck("/remarks/*"), struck("/closed/*"))
