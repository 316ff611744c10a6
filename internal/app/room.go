package app

import (
	"context"
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"plait.example/internal/feedback"
	"plait.example/internal/practical"
)

// Room is how much of what a class shares the room has.
type Room = feedback.Room

// SharedKit are the kinds that a room may have, as words.
func SharedKit() (kinds []string) {
	for _, k := range feedback.AllShared {
		kinds = append(kinds, string(k))
	}
	return kinds
}

// mostOfAKind is far above any room.
const mostOfAKind = 200

// roomKind keeps the rooms of practicals, by the practical's id. A practical's
// kitchen is one cook's, so that a room is asked for by itself.
const roomKind = "room"

// RoomOf is the room of a practical as the teacher said; empty: nothing was said.
func (a *App) RoomOf(ctx context.Context, id string) (Room, error) {
	kept, err := a.Store.Kept(ctx, a.Teacher, roomKind)
	if err != nil || kept[id] == "" {
		return Room{}, err
	}
	var room Room
	if err := json.Unmarshal([]byte(kept[id]), &room); err != nil {
		return nil, fmt.Errorf("the room of a practical: %w", err)
	}
	return room, nil
}

// SetRoom keeps the room of a practical; what is empty is not known. Faults name
// the kind as field.
func (a *App) SetRoom(ctx context.Context, id string, said map[string]string) error {
	room, faults := roomOf(said)
	if len(faults) > 0 {
		return faults
	}
	text, err := json.Marshal(room)
	if err != nil {
		return err
	}
	return a.Store.Keep(ctx, a.Teacher, roomKind, map[string]string{id: string(text)}, nil, a.now())
}

// ReadRoom reads a room as on a command line: "ovens=12,food processors=4".
func ReadRoom(text string) (Room, error) {
	said := map[string]string{}
	for _, part := range strings.Split(text, ",") {
		if strings.TrimSpace(part) == "" {
			continue
		}
		kind, number, _ := strings.Cut(part, "=")
		said[strings.TrimSpace(kind)] = strings.TrimSpace(number)
	}
	room, faults := roomOf(said)
	return room, faults.OrNil()
}

func roomOf(said map[string]string) (Room, practical.Faults) {
	room := Room{}
	var faults practical.Faults
	for kind, number := range said {
		n, err := strconv.Atoi(strings.TrimSpace(number))
		switch {
		case !slices.Contains(SharedKit(), kind):
			faults = append(faults, practical.Fault{Field: kind, Code: practical.Invalid, Message: fmt.Sprintf("a room has no %.30q to be counted", kind), Hint: "one of " + strings.Join(SharedKit(), ", ")})
		case strings.TrimSpace(number) == "":
		case err != nil || n < 0 || n > mostOfAKind:
			faults = append(faults, practical.Fault{Field: kind, Code: practical.Invalid, Message: fmt.Sprintf("%.20q is no number of %s", number, kind), Hint: fmt.Sprintf("a whole number from 0 to %d, or nothing where it is not known", mostOfAKind)})
		case n > 0:
			room[feedback.Shared(kind)] = n
		}
	}
	slices.SortFunc(faults, func(a, b practical.Fault) int { return strings.Compare(a.Field, b.Field) })
	return room, faults
}
