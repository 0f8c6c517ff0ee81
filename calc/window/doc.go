// Package window finds the set reading, the never-exceed reading, what governs
// and whether a window is open between the two.
//
// The set reading is the smallest gauge division at which the set load is
// reached with the low efficiency. Each limit that is a load has a reading of
// its own: the largest division at which the limit is kept with the high
// efficiency. A limit that is a pressure has no efficiency in it. The
// never-exceed reading is the smallest of the limits' readings, and it is not
// known as long as one of the four required limits is neither entered nor
// waived by a named person.
//
// Not covered here yet: uncertainty and guards at both ends.
package window
