package rig

import (
	"strconv"
	"strings"
)

// Validity is when a certificate holds. Dates are texts YYYY-MM-DD; an empty
// text says nothing.
type Validity struct {
	On       string // date of the calibration
	Months   int    // months valid; 0: not said
	Piles    int    // piles valid; 0: not said
	VoidFrom string // from this day on it is void: repair, damage
}

// State says whether a certificate covers a day.
type State byte

// The states.
const (
	Covers   State = 'c'
	NotYet   State = 'n' // the day is before the certificate's
	Ended    State = 'e' // its months are over
	Void     State = 'v' // repaired or damaged since
	UsedUp   State = 'u' // as many piles as it holds for have been pressed with it
	NoDate   State = 'd' // the certificate has no date, or one that is none
	NoPeriod State = 'p' // it is not said how long it holds
	BadDay   State = 'b' // the day asked about is no date
)

// Cover says whether a certificate covers a day, with so many piles pressed on it
// before. It covers the day of the calibration and the last day of its months;
// it is void on the day it is void from. Of several reasons the first in the
// order of the states is given: before its date, void, ended, used up.
//
// How long a certificate holds is a rule of the place, 6 months for prestressing
// jacks in one; it is stated, never assumed. Source: common practice.
func (v Validity) Cover(day string, piles int) State {
	at, ok := DayNumber(day)
	if !ok {
		return BadDay
	}
	on, ok := DayNumber(v.On)
	if !ok {
		return NoDate
	}
	void, isVoid := DayNumber(v.VoidFrom)
	end, ends := v.LastDay()
	last, _ := DayNumber(end)
	switch {
	case at < on:
		return NotYet
	case isVoid && at >= void:
		return Void
	case ends && at > last:
		return Ended
	case v.Piles > 0 && piles >= v.Piles:
		return UsedUp
	case !ends && v.Piles == 0:
		return NoPeriod
	}
	return Covers
}

// LastDay returns the last day that the months cover: the same day of the month,
// or the last of a shorter month. ok is false where no months, or no date, are
// said.
func (v Validity) LastDay() (day string, ok bool) {
	y, m, d, ok := date(v.On)
	if !ok || v.Months < 1 {
		return "", false
	}
	m += v.Months
	y, m = y+(m-1)/12, (m-1)%12+1
	return written(y, m, min(d, monthLength(y, m))), true
}

// DaysLeft returns how many days a certificate holds after a day: 0 on its last
// one. ok is false where no end is said or the day is none.
func (v Validity) DaysLeft(day string) (n int, ok bool) {
	end, ok := v.LastDay()
	last, _ := DayNumber(end)
	if void, isVoid := DayNumber(v.VoidFrom); isVoid && (!ok || void-1 < last) {
		last, ok = void-1, true
	}
	at, isDay := DayNumber(day)
	return last - at, ok && isDay
}

// Latest returns the place in the list of the latest certificate that covers a
// day, by its date; of two of one day the later in the list. piles are those
// pressed on each before. It is -1 where none does.
func Latest(list []Validity, piles []int, day string) int {
	found, at := -1, 0
	for i, v := range list {
		if v.Cover(day, piles[i]) != Covers {
			continue
		}
		if on, _ := DayNumber(v.On); found < 0 || on >= at {
			found, at = i, on
		}
	}
	return found
}

// InDoubt returns the days whose piles an as-found result outside its limits
// touches: from the calibration before it to the day of the result, both
// included. Without one before, from is empty: all piles up to then. dates are
// those of all certificates of the same gauge and jacks, at the place of the one
// with the result. ok is false where its own date is none.
//
// Source: ISO/IEC 17025 asks to consider the effect on earlier results (7.10,
// from memory); which piles is arithmetic.
func InDoubt(dates []string, at int) (from, to string, ok bool) {
	day, ok := DayNumber(dates[at])
	if !ok {
		return "", "", false
	}
	latest := 0
	for i, d := range dates {
		if n, isDay := DayNumber(d); isDay && i != at && n < day && (from == "" || n > latest) {
			from, latest = d, n
		}
	}
	return from, dates[at], true
}

// DayNumber counts the days from 1970-01-01 in the Gregorian calendar, so that
// days can be compared and subtracted. ok is false for anything but a date
// YYYY-MM-DD of the years 1 to 9999. Our own arithmetic: package time would
// bring a clock and zones along that no certificate knows.
func DayNumber(day string) (n int, ok bool) {
	y, m, d, ok := date(day)
	if !ok {
		return 0, false
	}
	// Years begin in March, so that the leap day is the last of one.
	if m -= 3; m < 0 {
		y, m = y-1, m+12
	}
	return 365*y + y/4 - y/100 + y/400 + (153*m+2)/5 + d - 719469, true
}

// date reads YYYY-MM-DD.
func date(text string) (y, m, d int, ok bool) {
	parts := strings.Split(text, "-")
	if len(text) != 10 || len(parts) != 3 || len(parts[0]) != 4 || len(parts[1]) != 2 {
		return 0, 0, 0, false
	}
	for i, into := range []*int{&y, &m, &d} {
		n, err := strconv.ParseUint(parts[i], 10, 16)
		if err != nil {
			return 0, 0, 0, false
		}
		*into = int(n)
	}
	return y, m, d, y >= 1 && m >= 1 && m <= 12 && d >= 1 && d <= monthLength(y, m)
}

func monthLength(y, m int) int {
	switch {
	case m == 2 && (y%4 == 0 && y%100 != 0 || y%400 == 0):
		return 29
	case m == 2:
		return 28
	case m == 4 || m == 6 || m == 9 || m == 11:
		return 30
	}
	return 31
}

// written is a date as text; a leading digit keeps the zeros.
func written(y, m, d int) string {
	return strconv.Itoa(10000 + y)[1:] + "-" + strconv.Itoa(100 + m)[1:] + "-" + strconv.Itoa(100 + d)[1:]
}
