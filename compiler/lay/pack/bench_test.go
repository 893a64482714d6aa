package pack

import (
	"encoding/json"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"
)

var (
	millions = flag.Int64("millions", 20, "how much work")
	instance = flag.String("instance", "", "one instance")
	seeds    = flag.Int("seeds", 1, "how many seeds")
)

func load(t testing.TB, name string) (Problem, float64) {
	src, err := os.ReadFile(filepath.Join("../../../../shared/reference/nesting", name+".json"))
	if err != nil {
		t.Skip("the open instances are not beside the project")
	}
	var d struct {
		Width float64 `json:"strip_width"`
		Items []struct {
			Quantity  int
			Rotations []float64
			Polygon   [][2]float64
		}
	}
	if err := json.Unmarshal(src, &d); err != nil {
		t.Fatal(err)
	}
	scale := math.Floor(200_000 / d.Width)
	p := Problem{Width: int64(math.Round(d.Width * scale))}
	area := 0.0
	for k, it := range d.Items {
		var s Shape
		s.Kind = k
		for _, deg := range it.Rotations {
			c, si := int64(math.Round(math.Cos(deg*math.Pi/180))), int64(math.Round(math.Sin(deg*math.Pi/180)))
			var ring []Point
			for _, v := range it.Polygon {
				x, y := int64(math.Round(v[0]*scale)), int64(math.Round(v[1]*scale))
				ring = append(ring, Point{x*c - y*si, x*si + y*c})
			}
			s.Poses = append(s.Poses, Pose{Outline: ring})
		}
		for range it.Quantity {
			p.Shapes = append(p.Shapes, s)
			area += float64(Area2(s.Poses[0].Outline)) / 2
		}
	}
	return p, area
}

func TestOpenInstances(t *testing.T) {
	if *instance == "" {
		t.Skip("name one, or all")
	}
	for _, name := range []string{"shirts", "trousers", "albano", "marques", "dagli", "mao", "swim"} {
		if *instance != "all" && *instance != name {
			continue
		}
		for seed := range *seeds {
			p, area := load(t, name)
			start := time.Now()
			last := int64(0)
			l, err := Search(p, Budget{Work: *millions * 1e6, Seed: uint64(seed + 1), Better: func(_, w int64) { last = w }})
			if err != nil {
				t.Fatal(err)
			}
			fmt.Printf("%-10s seed %d  %.2f %%  %.1f s, last better at %.1fM\n", name, seed+1, 100*area/float64(p.Width)/float64(l.Length), time.Since(start).Seconds(), float64(last)/1e6)
		}
	}
}
