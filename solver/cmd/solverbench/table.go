package main

import (
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"runtime"
	"slices"
	"strconv"
	"strings"

	"plait.example/solver"
)

// summary sums up one set.
type summary struct {
	set                string
	n, proved, decided int
	agree, contradict  int
	all                int      // proved in every objective
	closed, better     []string // published as open and decided here; below the published value
	gaps               []float64
	seconds, first     []float64
	ratios             []float64
	baseline           int // decided by the baseline
	ours               int // decided here, of those that the baseline was run on
	compared           int
}

func (s *summary) add(r outcome, k published) {
	s.n++
	decided := r.status == solver.Optimal || r.status == solver.Infeasible
	if r.status == solver.Optimal {
		s.proved++
		if r.all == r.levels {
			s.all++
		}
	}
	if decided {
		s.decided++
	}
	if contradicts(r, k) {
		s.contradict++
	} else if decided && (k.infeasible || k.lower >= 0 && k.lower == k.upper) {
		s.agree++
	}
	if k.upper >= 0 {
		if decided && k.lower < k.upper {
			s.closed = append(s.closed, fmt.Sprintf("%s %d", bare(r.instance), r.value))
		}
		if r.value >= 0 {
			s.gaps = append(s.gaps, 100*float64(r.value-k.upper)/float64(max(1, k.upper)))
			if r.value < k.upper {
				s.better = append(s.better, fmt.Sprintf("%s %d for %d", bare(r.instance), r.value, k.upper))
			}
		}
	}
	s.seconds = append(s.seconds, r.seconds)
	if r.first >= 0 {
		s.first = append(s.first, r.first)
	}
	s.compare(r, k, decided)
}

// compare sets an outcome beside the baseline's.
func (s *summary) compare(r outcome, k published, decided bool) {
	if k.decided == "" {
		return
	}
	s.compared++
	theirs := k.decided == "optimal" || k.decided == "infeasible"
	if theirs {
		s.baseline++
	}
	if decided {
		s.ours++
	}
	if theirs && decided {
		s.ratios = append(s.ratios, max(r.seconds, 1e-4)/max(k.seconds, 1e-3))
	}
}

// contradicts says that an outcome and what was published cannot both be true.
func contradicts(r outcome, k published) bool {
	switch {
	case k.infeasible:
		return r.value >= 0
	case r.status == solver.Infeasible:
		return k.upper >= 0
	}
	return k.upper >= 0 && r.bound > k.upper || r.value >= 0 && r.value < k.lower
}

func header(rows, table io.Writer, o options) error {
	w := csv.NewWriter(rows)
	if err := w.Write([]string{"set", "instance", "status", "makespan", "lower_bound", "seconds", "first_seconds", "conflicts", "objectives", "objectives_proved", "values", "published_lower", "published_upper"}); err != nil {
		return err
	}
	if w.Flush(); w.Error() != nil {
		return w.Error()
	}
	_, err := fmt.Fprintf(table, `Limit %v an instance, seed %d, %d at a time, %s/%s, %s.

| set | n | optimal proved | all objectives proved | decided | agree | contradict | mean gap | median s | 90 %% within s | worst s | first schedule, median s | decided, baseline | time to baseline's, median |
|---|---|---|---|---|---|---|---|---|---|---|---|---|---|
`, o.limit, o.seed, o.parallel, runtime.GOOS, runtime.GOARCH, runtime.Version())
	return err
}

// write adds the set's row to the table, and below it what was closed or
// improved.
func (s *summary) write(out io.Writer) error {
	cells := []string{
		s.set, strconv.Itoa(s.n), strconv.Itoa(s.proved), strconv.Itoa(s.all), strconv.Itoa(s.decided), strconv.Itoa(s.agree), strconv.Itoa(s.contradict),
		"-", seconds(s.seconds, 50), seconds(s.seconds, 90), seconds(s.seconds, 100), seconds(s.first, 50), "-", "-",
	}
	if len(s.gaps) > 0 {
		cells[7] = fmt.Sprintf("%.3f %%", mean(s.gaps))
	}
	if s.compared > 0 {
		cells[12] = fmt.Sprintf("%d to %d", s.ours, s.baseline)
	}
	if len(s.ratios) > 0 {
		cells[13] = fmt.Sprintf("%.2f", share(s.ratios, 50))
	}
	text := "| " + strings.Join(cells, " | ") + " |\n"
	if len(s.closed) > 0 {
		text += fmt.Sprintf("| %s closed | %s |\n", s.set, strings.Join(s.closed, ", "))
	}
	if len(s.better) > 0 {
		text += fmt.Sprintf("| %s improved | %s |\n", s.set, strings.Join(s.better, ", "))
	}
	_, err := io.WriteString(out, text)
	return err
}

func mean(list []float64) float64 {
	sum := 0.0
	for _, x := range list {
		sum += x
	}
	return sum / float64(len(list))
}

// share is the least member that so many per cent do not exceed.
func share(list []float64, per int) float64 {
	list = slices.Sorted(slices.Values(list))
	return list[max(0, (len(list)*per+99)/100-1)]
}

func seconds(list []float64, per int) string {
	if len(list) == 0 {
		return "-"
	}
	return strconv.FormatFloat(share(list, per), 'f', 4, 64)
}

func writeRow(rows io.Writer, set string, r outcome, k published) error {
	number := func(n int) string {
		if n < 0 {
			return ""
		}
		return strconv.Itoa(n)
	}
	bound := number(r.bound)
	if r.status == solver.Infeasible {
		bound = ""
	}
	first := ""
	if r.first >= 0 {
		first = strconv.FormatFloat(r.first, 'f', 4, 64)
	}
	w := csv.NewWriter(rows)
	err := w.Write([]string{
		set, r.instance, r.status.String(), number(r.value), bound, strconv.FormatFloat(r.seconds, 'f', 4, 64), first,
		strconv.FormatInt(r.conflicts, 10), strconv.Itoa(r.levels), strconv.Itoa(r.all), strings.Join(r.values, " "), number(k.lower), number(k.upper),
	})
	w.Flush()
	return errors.Join(err, w.Error())
}
