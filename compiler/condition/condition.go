// Package condition says where something holds: in which views, with which
// options and choices, and in which sizes.
//
// In come variables with their values, and conditions built from them with
// and, or and not; out come answers ("is this ever so?", "does this follow?"),
// one garment as an example, the smallest description of where a condition
// holds, and that description in words.
//
// A condition is a number in a Space. Two conditions of one Space that hold
// for the same garments have the same number, so == compares them. A Space
// holds a decision diagram whose nodes have one branch for each value of a
// variable and are stored once (R. E. Bryant, Graph-Based Algorithms for
// Boolean Function Manipulation, 1986, with more than two branches). That
// keeps the cost near to the number of guards where guards are independent;
// where many of them meet it can still grow, and then the Space stops at a
// limit and says so.
//
// The package knows nothing of pieces, seams or findings, and no label of a
// view: the words for values come from the caller.
package condition

import "sort"

// Kind is the kind of a variable.
type Kind uint8

// The kinds, in the order in which a Space decides them: sizes last, as few
// conditions depend on them.
const (
	View Kind = iota
	Choice
	Option
	Size
)

// Values of an option.
const (
	Without = 0
	With    = 1
)

// Var is one thing that the sewist decides.
type Var struct {
	Kind   Kind
	Name   string
	Values []string // at least one; of an option "without" and "with"
}

// VarID names a variable of a Space: the how-manieth it was added, from 0.
type VarID int

// Cond is a condition of one Space. The zero value is False.
type Cond int32

const (
	False Cond = 0 // holds nowhere
	True  Cond = 1 // holds everywhere

	// Undecided is the answer of a Space that ran into its limit. It stays so
	// through every operation that its value matters to.
	Undecided Cond = -1
)

// DefaultLimit is how many nodes a Space may hold.
const DefaultLimit = 2_000_000

// Space owns variables and the conditions over them. It is not safe for use by
// several goroutines at a time. Conditions of different Spaces must not be
// mixed.
type Space struct {
	vars  []Var
	level []int32 // of each variable; nodes nearer the root have the lower one
	order []VarID // the variable of each level
	fixed bool    // the order is in use

	nodes    []node
	branches []Cond // of all nodes, one after the other
	unique   []int32

	memo     memo
	limit    int
	steps    int // of the operation under way
	overflow bool

	forked  int           // how many nodes there were when this became a fork
	brought map[Cond]Cond // what of a fork has been brought over; by its parent alone
}

// node decides one variable. Nodes 0 and 1 are False and True.
type node struct {
	level int32
	first int32 // its first branch in branches; one for each value
}

// terminal is the level of False and True, below every variable.
const terminal = int32(1<<31 - 1)

// NewSpace returns a Space with no variables.
func NewSpace() *Space { return NewSpaceWithLimit(DefaultLimit) }

// NewSpaceWithLimit returns a Space that holds at most this many nodes.
func NewSpaceWithLimit(nodes int) *Space {
	return &Space{
		nodes:  []node{{level: terminal}, {level: terminal}},
		unique: make([]int32, 256),
		limit:  nodes,
	}
}

// AddVar adds a variable. An option needs no values: they are "without" and
// "with". Variables are decided in the order of their kinds and, within a
// kind, in the order in which they were added; those that are added after the
// first condition was built come last.
func (s *Space) AddVar(kind Kind, name string, values ...string) VarID {
	if kind == Option {
		values = []string{"without", "with"}
	}
	if len(values) == 0 {
		values = []string{""}
	}
	id := VarID(len(s.vars))
	s.vars = append(s.vars, Var{Kind: kind, Name: name, Values: append([]string(nil), values...)})
	s.level = append(s.level, int32(len(s.order)))
	s.order = append(s.order, id)
	return id
}

// fix settles the order of the variables.
func (s *Space) fix() {
	if s.fixed {
		return
	}
	s.fixed = true
	sort.SliceStable(s.order, func(i, j int) bool { return s.vars[s.order[i]].Kind < s.vars[s.order[j]].Kind })
	for level, id := range s.order {
		s.level[id] = int32(level)
	}
}

// inOrder returns the variables in the order in which they are decided.
func (s *Space) inOrder() []VarID {
	s.fix()
	return s.order
}

// Var returns a variable; the zero Var if there is none of that number.
func (s *Space) Var(v VarID) Var {
	if !s.has(v) {
		return Var{}
	}
	return s.vars[v]
}

// Vars returns the number of variables.
func (s *Space) Vars() int { return len(s.vars) }

// Nodes returns the number of nodes that the Space holds.
func (s *Space) Nodes() int { return len(s.nodes) }

// Overflowed says whether an operation was given up because the Space had
// reached its limit. Its answer was Undecided; answers from before are right.
func (s *Space) Overflowed() bool { return s.overflow }

func (s *Space) has(v VarID) bool { return v >= 0 && int(v) < len(s.vars) }

// values returns how many values the variable of a level has.
func (s *Space) values(level int32) int { return len(s.vars[s.order[level]].Values) }
