package main

import "testing"

// The apron has the finished measures of its table, its armholes meet the sides at
// right angles, and its tape is long enough for both.
func TestApronMeasures(t *testing.T) {
	m := measure(t, "market-apron")
	m.eachSize(func(i int) {
		m.near("the width", 2*m.long("body", "hem"), m.finished("width", i), 0.2)
		m.near("the length", m.long("body", "centre"), m.finished("length", i), 0.2)
		m.near("the bib", 2*m.long("body", "top"), m.finished("bib", i), 0.2)
		m.near("the strap", m.long("strap", "outer"), m.finished("strap", i), 0.2)
		m.near("the corner at the armhole", m.inside("body", "side"), 90, 1)
		m.near("the end of the facing", m.inside("top-facing", "end"), m.inside("body", "armhole"), 0.5)
		if tape, need := m.pattern("bias", i), 2*m.long("body", "armhole")+40; tape < need {
			m.Errorf("size %s: %.0f mm of tape for two armholes that need %.0f", m.Sizes[i], tape, need)
		}
	})
}

// A crossed strap reaches from the bib over the shoulder to the other back corner. A
// dress maker's back waist length and across back are about 41 and 35 cm for a bust of
// 88 cm (recalled), so that from the bib over the shoulder to the underarm behind it
// takes about 60 to 80 cm.
func TestApronStrapReaches(t *testing.T) {
	m := measure(t, "market-apron")
	m.eachSize(func(i int) {
		if long := m.long("strap", "outer"); long < 600 || long > 800 {
			m.Errorf("size %s: the strap is %.0f mm long", m.Sizes[i], long)
		}
	})
}
