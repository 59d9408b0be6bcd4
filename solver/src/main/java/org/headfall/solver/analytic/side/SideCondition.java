package org.headfall.solver.analytic.side;

/** What holds along a straight side of an aquifer. */
public enum SideCondition {
    /** The head stays as it is: the image of a bore puts in what the bore takes out. */
    FIXED_HEAD(-1),
    /** No water crosses: the image of a bore takes out as much as the bore. */
    NO_FLOW(1);

    private final int imageSign;

    SideCondition(int imageSign) {
        this.imageSign = imageSign;
    }

    /** Rate of an image bore over the rate of the bore it mirrors. */
    int imageSign() {
        return imageSign;
    }
}
