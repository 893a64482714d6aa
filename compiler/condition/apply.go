package condition

type op uint8

const (
	opAnd op = iota
	opOr
	opDiff
)

// maxMemo bounds the memory of results; it is emptied when it is full.
const maxMemo = 1 << 20

// And returns the condition that both hold.
func (s *Space) And(a, b Cond) Cond { return s.run(opAnd, a, b) }

// Or returns the condition that at least one holds.
func (s *Space) Or(a, b Cond) Cond { return s.run(opOr, a, b) }

// Diff returns the condition that a holds and b does not.
func (s *Space) Diff(a, b Cond) Cond { return s.run(opDiff, a, b) }

// Not returns the condition that a does not hold.
func (s *Space) Not(a Cond) Cond { return s.Diff(True, a) }

// All returns the condition that all hold; True for none.
func (s *Space) All(conds ...Cond) Cond {
	all := True
	for _, c := range conds {
		all = s.And(all, c)
	}
	return all
}

// Any returns the condition that at least one holds; False for none.
func (s *Space) Any(conds ...Cond) Cond {
	some := False
	for _, c := range conds {
		some = s.Or(some, c)
	}
	return some
}

// Implies says whether b holds wherever a holds. It is false if the Space
// could not decide it.
func (s *Space) Implies(a, b Cond) bool { return s.Diff(a, b) == False }

// IsFalse says whether the condition is known to hold nowhere.
func (s *Space) IsFalse(c Cond) bool { return c == False }

// Overlaps says whether there is a garment for which both hold. It is also
// true if the Space could not decide it, so that nothing passes as clear.
func (s *Space) Overlaps(a, b Cond) bool { return s.And(a, b) != False }

// run starts an operation with its own count of steps.
func (s *Space) run(o op, a, b Cond) Cond {
	if c, ok := trivial(o, a, b); ok { // most are
		return c
	}
	s.steps = 0
	if s.memo.count > maxMemo {
		s.memo = memo{}
	}
	return s.apply(o, a, b)
}

// tooLong counts a step and says whether the operation has taken more than a
// Space of this limit is meant to do.
func (s *Space) tooLong() bool {
	s.steps++
	long := s.steps > 2*s.limit
	s.overflow = s.overflow || long
	return long
}

func (s *Space) apply(o op, a, b Cond) Cond {
	if c, ok := trivial(o, a, b); ok {
		return c
	}
	if o != opDiff && a > b {
		a, b = b, a // and, or: either way round
	}
	k := keyOf(o, a, b)
	if c, ok := s.memo.get(k); ok {
		return c
	}
	if s.tooLong() {
		return Undecided
	}
	level := min(s.nodes[a].level, s.nodes[b].level)
	var buffer [8]Cond
	branches := buffer[:0]
	for value := range s.values(level) {
		branches = append(branches, s.apply(o, s.branch(a, level, value), s.branch(b, level, value)))
	}
	return s.remember(k, s.make(level, branches))
}

// remember keeps a result, unless there is none.
func (s *Space) remember(k key, c Cond) Cond {
	if c != Undecided {
		s.memo.put(k, c)
	}
	return c
}

// trivial answers where one side decides. Undecided stays undecided unless
// the other side settles the answer.
func trivial(o op, a, b Cond) (Cond, bool) {
	switch {
	case o == opAnd && (a == False || b == False), o == opDiff && (a == False || b == True):
		return False, true
	case o == opOr && (a == True || b == True):
		return True, true
	case a == Undecided || b == Undecided:
		return Undecided, true
	case o == opDiff && a == b:
		return False, true
	case o == opDiff && b == False, o == opAnd && b == True, o == opOr && b == False, o != opDiff && a == b:
		return a, true
	case o == opAnd && a == True, o == opOr && a == False:
		return b, true
	}
	return False, false
}
