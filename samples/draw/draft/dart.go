package draft

import "math"

// Angle is how wide a dart opens, in degrees, that takes so much at the end of legs of
// this length.
func Angle(takes, leg float64) float64 { return 2 * math.Atan(takes/2/leg) * 180 / math.Pi }

// Dart opens a dart in an edge that was drawn as it runs when the dart is closed. The
// edge is parted so many millimetres from its start, and what comes after it is turned
// about the point of the dart, with a cap between the legs that meets the edge when the
// dart is pressed to either side. The legs run from the point to the edge.
func Dart(closed Path, along float64, point Point, takes float64) (open Path, legs [2]Path) {
	before, after := closed.Cut(along)
	foot := before.End()
	long := foot.Minus(point).Length()
	angle := Angle(takes, long)
	after = after.Turned(point, angle)
	tip := point.Plus(foot.Minus(point).Turned(angle / 2).Times(1 / math.Cos(angle*math.Pi/360)))
	legs = [2]Path{Line(point, foot), Line(point, after.Start())}
	return before.Then(Line(foot, tip, after.Start()), after), legs
}
