package trivet.flow.draw;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.eclipse.elk.alg.layered.options.CycleBreakingStrategy;
import org.eclipse.elk.alg.layered.options.LayeredMetaDataProvider;
import org.eclipse.elk.alg.layered.options.LayeredOptions;
import org.eclipse.elk.alg.layered.options.OrderingStrategy;
import org.eclipse.elk.alg.layered.options.WrappingStrategy;
import org.eclipse.elk.core.RecursiveGraphLayoutEngine;
import org.eclipse.elk.core.data.LayoutMetaDataService;
import org.eclipse.elk.core.math.ElkPadding;
import org.eclipse.elk.core.options.CoreOptions;
import org.eclipse.elk.core.options.Direction;
import org.eclipse.elk.core.options.EdgeRouting;
import org.eclipse.elk.core.util.BasicProgressMonitor;
import org.eclipse.elk.graph.ElkBendPoint;
import org.eclipse.elk.graph.ElkEdge;
import org.eclipse.elk.graph.ElkEdgeSection;
import org.eclipse.elk.graph.ElkNode;
import org.eclipse.elk.graph.util.ElkGraphUtil;
import trivet.flow.Flow;
import trivet.flow.Step;

/**
 * Where the boxes and ways of a flow lie, in dots: layers from top to bottom, wrapped into columns when the flow is long. The order of
 * the steps in the plan decides wherever the ways leave a choice, so that a small change moves little; only rework leads upwards.
 */
final class Layout {

    private static final int WRAP_FROM = 11;
    private static final double ASPECT = 0.75;

    static {
        LayoutMetaDataService.getInstance().registerLayoutMetaDataProviders(new LayeredMetaDataProvider());
    }

    /** The size of a box. */
    record Size(double width, double height) {
    }

    /** A box. */
    record Box(Step step, double x, double y, double width, double height) {
    }

    /** A way, as points. */
    record Way(String from, String to, boolean rework, List<double[]> points) {
    }

    /** The whole drawing. */
    record Drawn(double width, double height, Map<String, Box> boxes, List<Way> ways) {
    }

    private Layout() {
    }

    static Drawn of(Flow flow, Map<String, Size> sizes) {
        ElkNode graph = ElkGraphUtil.createGraph();
        graph.setProperty(CoreOptions.ALGORITHM, LayeredOptions.ALGORITHM_ID);
        graph.setProperty(LayeredOptions.DIRECTION, Direction.DOWN);
        graph.setProperty(LayeredOptions.EDGE_ROUTING, EdgeRouting.ORTHOGONAL);
        graph.setProperty(LayeredOptions.CONSIDER_MODEL_ORDER_STRATEGY, OrderingStrategy.NODES_AND_EDGES);
        graph.setProperty(LayeredOptions.CYCLE_BREAKING_STRATEGY, CycleBreakingStrategy.MODEL_ORDER);
        graph.setProperty(LayeredOptions.RANDOM_SEED, 1);
        graph.setProperty(LayeredOptions.PADDING, new ElkPadding(8));
        graph.setProperty(LayeredOptions.SPACING_NODE_NODE, 22.0);
        graph.setProperty(LayeredOptions.SPACING_NODE_NODE_BETWEEN_LAYERS, 26.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_NODE, 12.0);
        graph.setProperty(LayeredOptions.SPACING_EDGE_EDGE, 9.0);
        if (longest(flow) >= WRAP_FROM) {
            graph.setProperty(LayeredOptions.WRAPPING_STRATEGY, WrappingStrategy.MULTI_EDGE);
            graph.setProperty(LayeredOptions.ASPECT_RATIO, ASPECT);
        }
        Map<String, ElkNode> nodes = new LinkedHashMap<>();
        List<Step> ordered = flow.inOrder();
        for (Step step : ordered) {
            ElkNode node = ElkGraphUtil.createNode(graph);
            Size size = sizes.get(step.id());
            node.setDimensions(size.width(), size.height());
            nodes.putIfAbsent(step.id(), node);
        }
        Map<ElkEdge, Way> edges = new LinkedHashMap<>();
        for (Step step : ordered) {
            connect(edges, nodes, step.after(), step, false);
            connect(edges, nodes, step.reworkFrom(), step, true);
        }
        new RecursiveGraphLayoutEngine().layout(graph, new BasicProgressMonitor());
        Map<String, Box> boxes = new LinkedHashMap<>();
        nodes.forEach((id, node) -> boxes.put(id, new Box(flow.step(id).orElseThrow(), node.getX(), node.getY(), node.getWidth(), node.getHeight())));
        List<Way> ways = new ArrayList<>();
        edges.forEach((edge, way) -> ways.add(new Way(way.from(), way.to(), way.rework(), points(edge))));
        return new Drawn(graph.getWidth(), graph.getHeight(), boxes, ways);
    }

    private static void connect(Map<ElkEdge, Way> edges, Map<String, ElkNode> nodes, List<String> from, Step to, boolean rework) {
        for (String before : from) {
            if (nodes.containsKey(before)) {
                edges.put(ElkGraphUtil.createSimpleEdge(nodes.get(before), nodes.get(to.id())), new Way(before, to.id(), rework, List.of()));
            }
        }
    }

    private static List<double[]> points(ElkEdge edge) {
        List<double[]> points = new ArrayList<>();
        for (ElkEdgeSection section : edge.getSections()) {
            points.add(new double[] {section.getStartX(), section.getStartY()});
            for (ElkBendPoint bend : section.getBendPoints()) {
                points.add(new double[] {bend.getX(), bend.getY()});
            }
            points.add(new double[] {section.getEndX(), section.getEndY()});
        }
        return points;
    }

    /** The number of steps on the longest way, loops cut where they close. */
    private static int longest(Flow flow) {
        Map<String, Integer> depth = new LinkedHashMap<>();
        int longest = 0;
        for (Step step : flow.inOrder()) {
            int own = 1 + step.after().stream().mapToInt(before -> depth.getOrDefault(before, 0)).max().orElse(0);
            depth.put(step.id(), own);
            longest = Math.max(longest, own);
        }
        return longest;
    }
}
