package size

import "testing"

// TestReadLabel: the letters are those of 16 CFR 1120.3(b)(2), read; the rest is our
// own reading of how children's sizes are named.
func TestReadLabel(t *testing.T) {
	for name, want := range map[string]Label{
		"12":            {USLow: 12, USHigh: 12},
		"2T":            {USLow: 2, USHigh: 2},
		"3t-4t":         {USLow: 3, USHigh: 4},
		"6X":            {USLow: 6.5, USHigh: 6.5},
		"12 through 14": {USLow: 12, USHigh: 14},
		"10/12":         {USLow: 10, USHigh: 12},
		"L":             {USLow: 12, USHigh: 12, Letter: true},
		"xl":            {USLow: 16, USHigh: 16, Letter: true},
		"M":             {USLow: 8, USHigh: 8, Letter: true},
		"XS-M":          {USLow: 4, USHigh: 8, Letter: true},
		"XXL":           {Letter: true, Beyond: true},
		"18 months":     {MonthsLow: 18, MonthsHigh: 18},
		"18-24 mos":     {MonthsLow: 18, MonthsHigh: 24},
		"9m":            {MonthsLow: 9, MonthsHigh: 9},
		"4 years":       {MonthsLow: 48, MonthsHigh: 59},
		"5-9 y":         {MonthsLow: 60, MonthsHigh: 119},
		"128":           {CmLow: 128, CmHigh: 128},
		"134/140":       {CmLow: 134, CmHigh: 140},
		"00":            {},
		"36":            {},
		"One size":      {},
		"":              {},
	} {
		if got := ReadLabel(name); got != want {
			t.Errorf("%q is read as %+v, want %+v", name, got, want)
		}
	}
}
