package check

import (
	"seamwarden/compiler/assembly"
	"seamwarden/compiler/model"
)

// leftOut reports whether a trouble is none after all: a sleeve that is said to be
// sewn in flat is closed by the underarm seam later; a seam that is sewn in one row
// with what crosses its end goes round the corner there; elastic goes into a casing
// that is closed; and the seam below a zip may be sewn before the zip.
func leftOut(t assembly.Trouble) bool {
	switch {
	case t.Kind == assembly.SeamCrossedOpen:
		return t.Op.Phrase("flat") != nil
	case t.By == nil:
		return false
	case t.Kind == assembly.FinishedTooLate || t.Kind == assembly.PressedTooLate:
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

func sews(op *model.Op, s *model.Seam) bool {
	for _, o := range op.Objects {
		if op.Row.Sews && o.Seam == s {
			return true
		}
	}
	return false
}
