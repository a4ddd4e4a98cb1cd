package trivet.site;

/** Taking the demo bakery away: its folder, once nothing writes there any more. */
public interface DemoRemoval {

    /** Stops the service soon, and then deletes the folder of the demo. */
    void request();
}
