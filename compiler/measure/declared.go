package measure

// Steps is a rounding that a designer declares for one kind of measure: what a
// printed value is a multiple of in either system. A system of nothing keeps the
// rounding of the kind.
type Steps struct {
	Imperial, Metric Length
}

// in gives the step of a system, nothing if none is declared for it.
func (s Steps) in(system System) Length {
	if system == Metric {
		return s.Metric
	}
	return s.Imperial
}

// Round returns the length as it is printed in a system in which it was not
// written: the nearest multiple of the declared step, halves upward; for cloth the
// next one that is not less. Where no step is declared it is [Round].
func (s Steps) Round(l Length, kind Kind, system System) Length {
	step := s.in(system)
	if step.Sign() <= 0 || l.IsZero() {
		return Round(l, kind, system)
	}
	if l.Sign() < 0 {
		return s.Round(l.Mul(-1), kind, system).Mul(-1)
	}
	return lengthOf(toStep(l.Rat(), step.Rat(), rules[kind].up))
}

// Print is [Print] with the declared steps: the half in the system that it was
// written in is exact, the other one obeys the steps.
func (s Steps) Print(l Length, kind Kind, written System, style Style) (imperial, metric string) {
	i, m := l, l
	if written != Imperial {
		i = s.Round(l, kind, Imperial)
	}
	if written != Metric {
		m = s.Round(l, kind, Metric)
	}
	return InImperial(i, kind, true, style), InMetric(m, kind, true, style)
}

// Within says whether a length may be another one that was rounded by the steps of
// a system: they differ by no more than half a step.
func (s Steps) Within(a, b Length, system System) bool {
	return a.Sub(b).Abs().Mul(2).Cmp(s.in(system)) <= 0
}
