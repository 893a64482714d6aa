package size

// The standards that a table of sizes can say it follows. Only numbers are given
// here. What was read in two unrelated secondary sources is told from what is recalled
// from memory: a recalled value is no authority, and a finding says so.

// standard is one table of body measures. Lengths are in millimetres.
type standard struct {
	name    string
	sign    string // what the words after follows: hold
	who     string // "", "men" or "children"
	blocks  []block
	letters []letterClass
}

// block is columns of one table: measures that stand in a line belong together.
type block []series

// series is one measure, smallest first.
type series struct {
	keys   []string // rows of a chart that measure it
	values []int
	limits []int // of the classes, one more than values; nil where none are known
	read   int   // how many of the values were read; the rest is recalled
}

// letterClass is a letter with the girth from which and to which it holds.
type letterClass struct {
	letter   string
	from, to int
}

// standards: EN 13402-3:2004. Women's bust girths up to 128 and all letters READ in
// secondary sources; waist, hip, larger busts and the heights of children (every
// 6 cm) RECALLED. GB/T 1335.2-2008, figure type A, all of it RECALLED.
var standards = []standard{
	{name: "EN 13402-3 for women", sign: "13402", blocks: []block{{
		{keys: []string{"bust"}, read: 12,
			values: []int{760, 800, 840, 880, 920, 960, 1000, 1040, 1100, 1160, 1220, 1280, 1340, 1400, 1460, 1520},
			limits: []int{740, 780, 820, 860, 900, 940, 980, 1020, 1070, 1130, 1190, 1250, 1310, 1370, 1430, 1490, 1550}},
		{keys: []string{"waist"}, values: []int{600, 640, 680, 720, 760, 800, 840, 880, 940, 1000, 1060, 1120, 1180, 1240, 1300, 1360}},
		{keys: []string{"hip", "hips"}, values: []int{840, 880, 920, 960, 1000, 1040, 1080, 1120, 1170, 1220, 1270, 1320, 1370, 1420, 1470, 1520}},
	}}, letters: []letterClass{{"XXS", 660, 740}, {"XS", 740, 820}, {"S", 820, 900}, {"M", 900, 980}, {"L", 980, 1070}, {"XL", 1070, 1190}, {"XXL", 1190, 1310}, {"3XL", 1310, 1430}}},
	{name: "EN 13402-3 for men", sign: "13402", who: "men",
		letters: []letterClass{{"XXS", 700, 780}, {"XS", 780, 860}, {"S", 860, 940}, {"M", 940, 1020}, {"L", 1020, 1100}, {"XL", 1100, 1180}, {"XXL", 1180, 1290}, {"3XL", 1290, 1410}}},
	{name: "EN 13402-3 for children", sign: "13402", who: "children", blocks: []block{{
		{keys: []string{"height"}, values: every(60, 500, 1760)},
	}}},
	{name: "GB/T 1335.2, figure type A", sign: "1335", blocks: []block{
		{{keys: []string{"height"}, values: every(50, 1450, 1750)}, {keys: []string{"arm", "arm-length"}, values: every(15, 460, 550)}},
		{{keys: []string{"bust", "chest"}, values: every(40, 720, 960)}, {keys: []string{"neck"}, values: every(8, 312, 360)}},
		{{keys: []string{"waist"}, values: every(20, 600, 760)}, {keys: []string{"hip", "hips"}, values: every(18, 828, 972)}},
	}},
}

func every(step, from, to int) (all []int) {
	for v := from; v <= to; v += step {
		all = append(all, v)
	}
	return
}
