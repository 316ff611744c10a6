package lcg

// An atom is a literal x >= k that the search may branch on: a Boolean, or a
// literal that occurred in a learnt clause. Atoms are ordered by activity, in
// the manner of VSIDS (M. Moskewicz et al., Chaff, 2001).

// atomKey names an atom.
type atomKey struct {
	v Var
	k int32
}

type order struct {
	byKey  map[atomKey]int32
	keys   []atomKey
	score  []float64
	heap   []int32
	place  []int32   // position in the heap, or -1
	parked [][]int32 // by variable: atoms taken from the heap because they were decided
	step   float64
}

func (o *order) init() {
	o.byKey = map[atomKey]int32{}
	o.step = 1
}

func (o *order) addVar() { o.parked = append(o.parked, nil) }

// intern finds or makes an atom.
func (o *order) intern(v Var, k int32) int32 {
	key := atomKey{v, k}
	if a, ok := o.byKey[key]; ok {
		return a
	}
	a := int32(len(o.keys))
	o.byKey[key] = a
	o.keys = append(o.keys, key)
	o.score = append(o.score, 0)
	o.place = append(o.place, -1)
	o.insert(a)
	return a
}

// keyOf is the positive form of a literal.
func keyOf(l Lit) atomKey {
	if l.Side&1 == 0 {
		return atomKey{l.Var(), l.Min}
	}
	return atomKey{l.Var(), 1 - l.Min}
}

// bump raises the activity of a literal's atom, if it has one.
func (e *Engine) bump(l Lit) {
	k := keyOf(l)
	if a, ok := e.atoms.byKey[k]; ok {
		e.atoms.add(a)
	}
}

// raise does the same and makes the atom if need be.
func (e *Engine) raise(l Lit) {
	k := keyOf(l)
	e.atoms.add(e.atoms.intern(k.v, k.k))
}

func (o *order) add(a int32) {
	o.score[a] += o.step
	if o.score[a] > 1e100 {
		for i := range o.score {
			o.score[i] *= 1e-100
		}
		o.step *= 1e-100
	}
	if o.place[a] >= 0 {
		o.up(o.place[a])
	}
}

// decay makes older bumps count less.
func (o *order) decay() { o.step /= 0.95 }

// unpark puts a variable's undecided atoms back into the heap.
func (e *Engine) unpark(v Var) {
	o := &e.atoms
	kept := o.parked[v][:0]
	for _, a := range o.parked[v] {
		if e.open(o.keys[a]) {
			o.insert(a)
		} else {
			kept = append(kept, a)
		}
	}
	o.parked[v] = kept
}

// open says that an atom is neither true nor false.
func (e *Engine) open(k atomKey) bool {
	return e.bound[2*k.v] < k.k && -e.bound[2*k.v+1] >= k.k
}

// MostActive returns the open atom of greatest activity as a literal with the
// preferred sign, and false if none is open.
func (e *Engine) MostActive() (Lit, bool) {
	o := &e.atoms
	for len(o.heap) > 0 {
		a := o.heap[0]
		k := o.keys[a]
		if e.open(k) {
			return e.lean(k), true
		}
		o.removeTop()
		o.parked[k.v] = append(o.parked[k.v], a)
	}
	return Lit{}, false
}

// lean chooses the sign of an atom by the variable's preferred value.
func (e *Engine) lean(k atomKey) Lit {
	l := Lit{Side(2 * k.v), k.k}
	if e.phase[k.v] >= k.k {
		return l
	}
	return l.Not()
}

func (o *order) insert(a int32) {
	if o.place[a] >= 0 {
		return
	}
	o.heap = append(o.heap, a)
	o.place[a] = int32(len(o.heap) - 1)
	o.up(o.place[a])
}

func (o *order) removeTop() {
	top := o.heap[0]
	n := len(o.heap) - 1
	o.heap[0] = o.heap[n]
	o.place[o.heap[0]] = 0
	o.heap = o.heap[:n]
	o.place[top] = -1
	if n > 0 {
		o.down(0)
	}
}

// before orders atoms: greater activity first, then older.
func (o *order) before(a, b int32) bool {
	return o.score[a] > o.score[b] || o.score[a] == o.score[b] && a < b
}

func (o *order) up(i int32) {
	a := o.heap[i]
	for i > 0 {
		p := (i - 1) / 2
		if !o.before(a, o.heap[p]) {
			break
		}
		o.heap[i] = o.heap[p]
		o.place[o.heap[i]] = i
		i = p
	}
	o.heap[i] = a
	o.place[a] = i
}

func (o *order) down(i int32) {
	a := o.heap[i]
	n := int32(len(o.heap))
	for {
		c := 2*i + 1
		if c >= n {
			break
		}
		if c+1 < n && o.before(o.heap[c+1], o.heap[c]) {
			c++
		}
		if !o.before(o.heap[c], a) {
			break
		}
		o.heap[i] = o.heap[c]
		o.place[o.heap[i]] = i
		i = c
	}
	o.heap[i] = a
	o.place[a] = i
}
