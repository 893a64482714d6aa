package check

import (
	"fmt"
	"strings"

	"seamwarden/compiler/model"
)

// the puts an article before the name of a piece.
func the(name string) string { return "the " + lower(name) }

// Upper gives a sentence its capital.
func Upper(s string) string {
	if s == "" {
		return s
	}
	return strings.ToUpper(s[:1]) + s[1:]
}

// plain is a name for use in a sentence: what stands before its first comma, so
// that "Button, 3/4 in" is a button.
func plain(name string) string {
	short, _, _ := strings.Cut(name, ",")
	return short
}

// some counts things: no button, 1 button, 2 buttons.
func some(n int, one, many string) string {
	switch n {
	case 0:
		return "no " + one
	case 1:
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func noneOr(n int) string {
	if n == 0 {
		return "none"
	}
	return fmt.Sprint(n)
}

// listed joins names for a sentence, and counts what is more than five.
func listed(names []string) string {
	const most = 5
	if len(names) > most {
		return fmt.Sprintf("%s and %d more", strings.Join(names[:most], ", "), len(names)-most)
	}
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}

// theSeams names one seam or several: the waist seam, the side and waist seams.
func theSeams(seams []*model.Seam) string {
	var names []string
	for _, s := range seams {
		names = append(names, strings.TrimSuffix(s.Called(), " seam"))
	}
	if len(seams) == 1 {
		return "the " + names[0] + " seam"
	}
	return "the " + listed(names) + " seams"
}

func isOrAre(n int) string {
	if n == 1 {
		return "is"
	}
	return "are"
}

// partWords names a cut part: the left front, the upper pocket bag.
func partWords(i *model.Instance) string {
	words := ""
	if i.Side != model.Neither {
		words = i.Side.String() + " "
	}
	if i.Copy != "" {
		words += strings.ReplaceAll(i.Copy, "-", " ") + " "
	}
	return "the " + words + lower(i.Piece.Name)
}

// edgeWords names an edge of a cut part: the hem edge of the left front.
func edgeWords(u *model.EdgeUse) string {
	part := partWords(u.Instance)
	if u.Side != model.Neither && u.Instance.Side == model.Neither {
		part = "the " + u.Side.String() + " half of " + part
	}
	return "the " + edgeCalled(u.Edge.Name) + " of " + part
}

// pathOf writes the reference to an edge, without its side if both are meant.
func pathOf(u *model.EdgeUse, both bool) string {
	if !both {
		return u.Path()
	}
	i := *u.Instance
	i.Side = model.Neither
	return (&model.EdgeUse{Instance: &i, Edge: u.Edge}).Path()
}

// copyWords is the same without the side, for what is so on both sides.
func copyWords(u *model.EdgeUse) string {
	i := *u.Instance
	i.Side = model.Neither
	return edgeWords(&model.EdgeUse{Instance: &i, Edge: u.Edge})
}

// edgeCalled names an edge; the word is not said twice.
func edgeCalled(name string) string {
	name = lower(name)
	if strings.HasSuffix(name, "edge") || strings.HasSuffix(name, "hem") {
		return name
	}
	return name + " edge"
}
