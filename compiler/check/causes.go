package check

import (
	"seamwarden/compiler/assembly"
	"seamwarden/compiler/model"
)

// leftOut reports whether a trouble is none after all: a sleeve that is said to be
// sewn in flat is closed by the underarm seam later; a seam that is sewn in one row
// with what crosses its end goes round the corner there; elastic goes into a casing
// that is closed; the seam below a zip may be sewn before the zip; and the ends of
// a binding may be folded in, as the text of the step says.
func leftOut(t assembly.Trouble) bool {
	switch {
	case t.Kind == assembly.SeamCrossedOpen:
		return t.Op.Phrase("flat") != nil
	case t.By == nil:
		return false
	case t.Kind == assembly.BoundEndOpen:
		return endsFolded(t.Op.Step)
	case t.Kind == assembly.FinishedTooLate || t.Kind == assembly.PressedTooLate || t.Kind == assembly.RowTooLate:
		return t.Seam != nil && sews(t.By, t.Seam)
	case t.Kind == assembly.ZipTooLate:
		return t.Op.Phrase("into") != nil || ownLine(t.By)
	}
	return false
}

// ownLine reports whether an operation sews edges to their own fellows only, as
// the seam below a zip.
func ownLine(op *model.Op) bool {
	for _, o := range op.Objects {
		if o.Seam == nil {
			return false
		}
		for _, j := range o.Seam.Copies {
			if len(j.A) != 1 || len(j.B) != 1 || j.A[0].Edge != j.B[0].Edge {
				return false
			}
		}
	}
	return true
}

// foldedEnds finds a sentence about the ends of a binding that are folded in.
var foldedEnds = expression(`(?i)\b(fold|turn|tuck|mitre|miter)[^.]*\b(end|ends|corners?)\b|\b(end|ends)\b[^.]*\b(fold|turn|tuck)(ed|s)?\b`)

// endsFolded reports whether the text of a step says what becomes of the ends of
// a binding.
func endsFolded(s *model.Step) bool {
	for _, i := range s.Items {
		switch x := i.(type) {
		case *model.Prose:
			if foldedEnds().MatchString(x.Text) {
				return true
			}
		case *model.Op:
			if x.As != nil && foldedEnds().MatchString(x.As.Text) {
				return true
			}
		}
	}
	return false
}

func sews(op *model.Op, s *model.Seam) bool {
	for _, o := range op.Objects {
		if op.Row.Sews && o.Seam == s {
			return true
		}
	}
	return false
}
