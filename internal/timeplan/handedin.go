package timeplan

import "time"

// HandedIn is a file with a plan that a learner wrote, as it was handed in for a
// practical. It is never changed; a later file of the same learner stands beside it.
type HandedIn struct {
	ID    int64            // from 1, unique in the store
	Name  string           // of the file
	Data  []byte           // as it came
	At    time.Time        // when
	Fixed map[int][]string // by the row's number: the steps that the teacher says it stands for
	Away  bool             // put away; it can be brought back
}
