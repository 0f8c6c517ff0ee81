// Package table reads and writes tables as people paste them from a
// spreadsheet or save them from one: delimited text. It knows no pile.
//
// # Reading
//
// RFC 4180 says how such a text should look: rows end with CR LF, a comma parts
// the cells, a cell may stand in quotation marks, and inside them a quotation
// mark is doubled and everything else stands for itself. [Read] takes what is
// found in the wild as well:
//
//   - UTF-8 with or without a byte order mark, UTF-16 with one, and bytes that
//     are not UTF-8 as Windows-1252, which the result says;
//   - semicolon, tab, comma or vertical bar between the cells, see [Offer];
//   - CR LF, LF or CR behind a row;
//   - rows of unequal length, and lines on which nothing stands.
//
// Cells come as they stand between separators and quotation marks, spaces and
// line ends included. A quotation mark inside a cell that does not begin with
// one stands for itself. Three things are refused rather than guessed, each with
// its line: a quotation mark that is never closed, something behind a closing
// one, and bytes that are no text.
//
// # Writing
//
// [Write] gives RFC 4180 in UTF-8 with a byte order mark, without which some
// spreadsheets take the bytes for another encoding. A text that a spreadsheet
// would run as a formula gets an apostrophe before it; see [Harmless].
package table
