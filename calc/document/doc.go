// Package document turns JSON text into a tree and a tree into JSON text. It
// knows nothing of piles: it keeps what a file says, digit for digit and in
// the order it was written, also where nobody here knows the meaning.
//
// # Reading
//
// [Read] is strict. It makes one pass over the bytes and lists every complaint
// it can find: the first [MaxComplaints] by position, and how many there were.
// A file with any complaint gives no tree; whoever called keeps the bytes.
//
// What is read is RFC 8259 with the limits of RFC 7493 (I-JSON) on names and
// text, and more:
//
//   - at most [MaxSize] bytes and [MaxDepth] levels of maps and lists;
//   - UTF-8; a byte order mark at the very start is accepted and dropped;
//   - no name twice in one map, and no two names equal but for case (Unicode
//     simple folding, as [strings.EqualFold]);
//   - no lone surrogate, no unescaped control character, nothing after the value.
//
// Reading goes on after a complaint that leaves the structure clear (names,
// text, numbers, unquoted words) and stops where it does not (a missing comma,
// a cut file, too many levels).
//
// # The tree
//
// A [Node] of kind Null, Bool, Number or Text never changes; whoever holds one
// keeps it, also when another takes its place. A Map or List is changed by
// [Node.Set], [Node.Remove], [Node.Append] and [MergePatch], and by nothing
// else. Numbers keep their raw digits; there is no float in the tree.
// Texts and names of a tree that was read are slices of one copy of the file,
// which lives as long as any of them ([ReadOwned] and [ReadText] do without the
// copy); maps with the same names in the same order share the list of names.
//
// A tree belongs to one goroutine: even looking a name up may build an index.
// A node must not be put below itself.
//
// # Three ways to write
//
// [Node.Stable] is the layout of files: one space a level; a map or list
// stands on one line, all that is in it included, when that line, indent and
// name included and the comma after it not, has at most 120 characters; a list
// without maps and lists in it fills lines of the same length, because records
// are long lists of short texts; all else has one member or item a line; a new
// line at the end. [Node.Compact] is one line without spaces. [Node.Canonical]
// is RFC 8785, the form that [Digest] is taken of. All three escape the same few
// characters: the quote, the backslash and the control characters below U+0020.
//
// A program can build a tree that [Read] would refuse (names that differ in
// case only, too many levels). [Check] and [CheckPatch] find that beforehand.
//
// # Patches
//
// [MergePatch] is RFC 7396 in place, at the cost of the patch and not of the
// tree. [Inverse] gives the patch that undoes it.
package document
