// Package drive holds what the record of a pile being pressed amounts to. It is
// pure: it gets plain readings and bounds, and knows no job.
package drive
