package check

import (
	"seamwarden/compiler/condition"
	"seamwarden/compiler/model"
)

// What keeps the allowances of a seam from fraying without an operation of its own.

// knitted reports whether all cloth in a seam stretches: knitted cloth does not fray.
// Common practice of the sewing room, no source.
func knitted(s *model.Seam) bool {
	uses := s.Uses()
	for _, u := range uses {
		if !u.Instance.Cut.Material.Stretch {
			return false
		}
	}
	return len(uses) > 0
}

// overlocked is where a seam is sewn with an overlock stitch, which shuts its
// allowances in at once.
func (r *run) overlocked(s *model.Seam) condition.Cond {
	c := condition.False
	for op := range r.opsOf("sew") {
		if onSeam(op, s) && op.Overlocks() {
			c = r.Space.Or(c, op.Cond)
		}
	}
	return c
}

// inTwoCloths reports whether the same seam is sewn in two cloths, as in a shell and in
// its lining: its allowances lie between the two.
func inTwoCloths(s *model.Seam) bool {
	var first *model.Material
	for _, j := range s.Copies {
		for _, u := range j.A {
			m := u.Instance.Cut.Material
			if first != nil && m != first && len(j.A) == 1 {
				return true
			}
			first = m
		}
	}
	return false
}

// finishSpoken are words for a seam that is finished as it is sewn; everySeam are
// those by which a sentence says so of all of them.
var (
	finishSpoken = expression(`(?i)\bfrench[- ]seam|\b(flat[- ])?fell(ed|ing)?\b|\boverlock|\bserge[rd]?\b|\bovercast|\bzigzag|\bpinking\b|\bneaten|\bfinish (the|its|their|both|all) (raw |seam )?(edges?|allowances?)|\braw edges?\b[^.]*\b(inside|enclosed|shut in)\b`)
	everySeam    = expression(`(?i)\b(all|each|every)\b[^.]*\b(seams?|allowances?|raw edges?)\b`)
)

// finishInText reports whether a text of the step that sews a seam says how it is
// finished, or a sentence anywhere says it of all seams.
func (r *run) finishInText(s *model.Seam) bool {
	for _, t := range r.written() {
		if !finishSpoken().MatchString(t.text) {
			continue
		}
		if everySeam().MatchString(t.text) {
			return true
		}
		for _, op := range r.Ops() {
			if op.Step == t.step && t.step != nil && op.Row.Sews && onSeam(op, s) {
				return true
			}
		}
	}
	return false
}

func onSeam(op *model.Op, s *model.Seam) bool {
	for _, o := range op.Objects {
		if o.Seam == s {
			return true
		}
	}
	return false
}
