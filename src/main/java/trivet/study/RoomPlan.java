package trivet.study;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import trivet.flow.Flow;
import trivet.flow.Step;
import trivet.study.Study.Room;
import trivet.study.Study.Way;
import trivet.words.Words;

/** The rooms with their zones, and the ways of food, people and waste between them; food goes where the steps are done. */
public final class RoomPlan {

    private RoomPlan() {
    }

    /** The ways of food that follow from the rooms of the steps, then those that were drawn. */
    public static List<Way> ways(Study study) {
        Set<Way> ways = new LinkedHashSet<>();
        for (Step step : study.steps()) {
            for (String before : step.after()) {
                study.steps().stream().filter(other -> other.id().equals(before)).findFirst().filter(other -> !other.room().isEmpty() && !step.room().isEmpty() && !other.room().equals(step.room()))
                        .ifPresent(other -> ways.add(new Way("food", other.room(), step.room(), "")));
            }
        }
        ways.addAll(study.ways());
        return List.copyOf(ways);
    }

    /** What is wrong with the rooms, in sentences: ready food in a raw room, waste through the ready room, gluten-free work in another zone than its own. */
    public static List<String> problems(Study study, Flow flow) {
        List<String> problems = new ArrayList<>();
        for (Step step : study.steps()) {
            Optional<Room> room = room(study, step.room());
            if (flow.ready(step.id()) && room.filter(r -> r.zone().equals("raw")).isPresent()) {
                problems.add(Words.say("j_rooms_ready_in_raw", flow.title(step.id()), room.get().title()));
            }
        }
        for (Way way : study.ways()) {
            if (room(study, way.from()).isEmpty() || room(study, way.to()).isEmpty()) {
                problems.add(Words.say("j_rooms_unknown", way.from(), way.to()));
            } else if (way.sort().equals("waste") && room(study, way.to()).filter(r -> r.zone().equals("ready-to-eat")).isPresent()) {
                problems.add(Words.say("j_rooms_waste_to_ready", room(study, way.to()).get().title()));
            }
        }
        return problems;
    }

    private static Optional<Room> room(Study study, String id) {
        return study.rooms().stream().filter(room -> room.id().equals(id)).findFirst();
    }
}
