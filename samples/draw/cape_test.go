package main

import (
	"math"
	"testing"
)

// The closed cape has the finished measures of its table: the fronts are cut back by
// half a band each, and the two bands lie on each other.
func TestCapeMeasures(t *testing.T) {
	m := measure(t, "puddle-cape")
	m.eachSize(func(i int) {
		m.near("the neck", 2*(m.long("back", "neck")+m.long("front", "neck"))+capeBand, m.finished("neck", i), 1)
		m.near("the lower edge", 2*(m.long("back", "hem")+m.long("front", "hem"))+capeBand, m.finished("hem", i), 1.5)
		m.near("the back length", m.long("back", "centre"), m.finished("length", i), 0.2)
		m.near("the height of the hood", m.long("hood", "face"), m.finished("hood", i), 0.2)
		m.near("the chest", 4*m.aroundChest(), m.finished("chest", i), 5)
		if tape, need := m.pattern("neck-tape", i), 2*m.long("hood", "neck"); tape < need+10 {
			m.Errorf("size %s: %.0f mm of tape for a neck seam of %.0f", m.Sizes[i], tape, need)
		}
		edge := 2*(m.long("back", "hem")+m.long("front", "hem")) + 2*m.long("pocket", "top")
		if tape := m.pattern("edge-tape", i); tape < edge+20 {
			m.Errorf("size %s: %.0f mm of tape for edges of %.0f", m.Sizes[i], tape, edge)
		}
	})
}

// aroundChest is a quarter of the cape where the straight part of its side begins: an arc
// about the place where both sides of the back, drawn on, would meet.
func (m *measured) aroundChest() float64 {
	side := m.outline("back").Edge("side").Curves[1].P
	flare := math.Atan2(side[3].X-side[0].X, side[3].Y-side[0].Y)
	return side[0].X / math.Sin(flare) * flare
}

// Neck and lower edge run on smoothly over the shoulder seams, and the hood over its own.
func TestCapeRunsOnOverSeams(t *testing.T) {
	m := measure(t, "puddle-cape")
	m.eachSize(func(int) {
		m.near("the neck at the shoulder", m.inside("back", "side")+m.inside("front", "neck"), 180, 1)
		m.near("the lower edge at the side", m.inside("back", "hem")+m.inside("front", "side"), 180, 1)
		m.near("the face at the top of the hood", m.inside("hood", "face"), 90, 1)
		m.near("the neck at the back of the hood", m.inside("hood", "crown"), 90, 1.5)
		m.near("hood and front at the front edge", m.inside("hood", "neck")+m.inside("front", "front-edge"), 180, 1)
	})
}

// A child's head goes into the hood: from the middle of the back over the crown to the
// face and back is more than the head's girth, 49 to 53 cm from two to eight years
// (recalled from growth charts).
func TestHoodHoldsAHead(t *testing.T) {
	m := measure(t, "puddle-cape")
	m.eachSize(func(i int) {
		head := 490 + 40*float64(i)/6
		if round := 2 * m.long("hood", "face"); round < head {
			m.Errorf("size %s: the face of the hood is %.0f mm round, and a head %.0f", m.Sizes[i], round, head)
		}
	})
}
