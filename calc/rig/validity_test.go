package rig_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	. "gaugewright/calc/rig"
)

// Our calendar is that of package time, day by day over 600 years.
func TestDayNumberIsThatOfTheCalendar(t *testing.T) {
	day := time.Date(1801, 1, 1, 0, 0, 0, 0, time.UTC)
	for range 220000 {
		n, ok := DayNumber(day.Format(time.DateOnly))
		require.True(t, ok)
		require.Equal(t, int(day.Unix()/86400), n, day.Format(time.DateOnly))
		day = day.AddDate(0, 0, 1)
	}
	for _, bad := range []string{"", "2026-1-05", "2026-13-01", "2026-02-29", "2026-04-31", "26-04-30", "2026/04/30", "2026-04-3x", "-026-04-30", "2026-00-10", "2026-01-00", "0000-01-01", "2026-+1-01"} {
		_, ok := DayNumber(bad)
		assert.False(t, ok, bad)
	}
}

func TestValidity(t *testing.T) {
	six := Validity{On: "2025-08-31", Months: 6}
	end, ok := six.LastDay()
	require.True(t, ok)
	assert.Equal(t, "2026-02-28", end)
	end, _ = Validity{On: "2023-12-31", Months: 2}.LastDay()
	assert.Equal(t, "2024-02-29", end)
	end, _ = Validity{On: "2025-01-15", Months: 12}.LastDay()
	assert.Equal(t, "2026-01-15", end)
	for day, want := range map[string]State{"2025-08-30": NotYet, "2025-08-31": Covers, "2026-02-28": Covers, "2026-03-01": Ended, "soon": BadDay} {
		assert.Equal(t, want, six.Cover(day, 0), day)
	}
	six.Piles, six.VoidFrom = 200, "2026-02-10"
	assert.Equal(t, Covers, six.Cover("2026-02-09", 199))
	assert.Equal(t, UsedUp, six.Cover("2026-02-09", 200))
	assert.Equal(t, Void, six.Cover("2026-02-10", 0))
	assert.Equal(t, NoDate, Validity{Months: 6}.Cover("2026-01-01", 0))
	assert.Equal(t, NoPeriod, Validity{On: "2025-08-31"}.Cover("2026-01-01", 0), "it is never assumed how long one holds")
	assert.Equal(t, Covers, Validity{On: "2025-08-31", Piles: 5}.Cover("2026-01-01", 4))

	for day, want := range map[string]int{"2026-02-08": 1, "2026-02-09": 0, "2026-02-10": -1} {
		n, ok := six.DaysLeft(day)
		require.True(t, ok)
		assert.Equal(t, want, n, day)
	}
	n, ok := Validity{On: "2025-08-31", Months: 6}.DaysLeft("2026-02-19")
	assert.True(t, ok)
	assert.Equal(t, 9, n)
	_, ok = Validity{On: "2025-08-31", Piles: 6}.DaysLeft("2026-02-19")
	assert.False(t, ok)

	list := []Validity{{On: "2025-03-01", Months: 12}, {On: "2025-09-01", Months: 12}, {On: "2026-03-01", Months: 12}}
	piles := []int{0, 0, 0}
	assert.Equal(t, -1, Latest(list, piles, "2025-02-01"))
	assert.Equal(t, 0, Latest(list, piles, "2025-08-31"))
	assert.Equal(t, 1, Latest(list, piles, "2026-02-28"), "the latest that covers it, not the first")
	list[1].VoidFrom = "2026-01-01"
	assert.Equal(t, 0, Latest(list, piles, "2026-02-28"))

	dates := []string{"2026-03-01", "2025-03-01", "", "2025-09-01"}
	from, to, ok := InDoubt(dates, 0)
	assert.True(t, ok)
	assert.Equal(t, []string{"2025-09-01", "2026-03-01"}, []string{from, to})
	from, _, _ = InDoubt(dates, 1)
	assert.Empty(t, from, "no calibration before: all piles up to then")
	_, _, ok = InDoubt(dates, 2)
	assert.False(t, ok)
}
